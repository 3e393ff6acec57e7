using CsCheck;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Paths.Diffuse;

/// <summary>Coupled cells against closed forms, and the books of whole houses.</summary>
public sealed class PowerBalanceTests
{
    private const double Same = 1e-9;

    private static readonly Gen<double> Area = Gen.Double[0.01, 40];

    [Fact, Law]
    public void A_lossless_room_but_for_an_aperture_fills_until_as_much_leaves_as_enters() =>
        Gen.Select(Area, Gen.Double[0, 10]).ForAll((aperture, watts) =>
        {
            // Through an opening passes a quarter of the density: S/4 · a = W.
            var balance = new PowerBalance(1);
            balance.Exchange(0, Cells.Outdoors, aperture);
            Assert.Equal(watts / aperture, balance.Flux([watts])[0], Same * (1 + (watts / aperture)));
        });

    [Fact, Law]
    public void Two_equal_rooms_with_a_door_share_what_one_is_fed() =>
        Gen.Select(Area, Area).ForAll((absorbing, door) =>
        {
            // F1·(A + d) = 1 + F2·d and F2·(A + d) = F1·d.
            var balance = new PowerBalance(2);
            balance.Absorb(0, absorbing);
            balance.Absorb(1, absorbing);
            balance.Exchange(0, 1, door);
            double[] flux = balance.Flux([1, 0]);
            double near = (absorbing + door) / (absorbing * (absorbing + (2 * door)));
            double far = door / (absorbing * (absorbing + (2 * door)));
            Assert.Equal(1, flux[0] / near, Same);
            Assert.Equal(1, flux[1] / far, Same);
        });

    [Fact, Law]
    public void What_is_fed_in_is_turned_to_heat_or_lost_out_of_doors() =>
        AnyBalance.ForAll((balance, powers, taking) =>
        {
            double[] flux = balance.Flux(powers);
            double taken = flux.Zip(taking, (f, squareMetres) => f * squareMetres).Sum();
            Assert.Equal(powers.Sum(), taken, Same);
        });

    [Fact, Law]
    public void Two_rooms_hear_each_other_alike() =>
        AnyBalance.ForAll((balance, _, _) =>
        {
            double[][] fed = [.. Enumerable.Range(0, balance.Count).Select(i =>
                balance.Flux([.. Enumerable.Range(0, balance.Count).Select(k => k == i ? 1.0 : 0)]))];
            for (int i = 0; i < balance.Count; i++)
            {
                for (int k = 0; k < i; k++)
                {
                    Assert.Equal(fed[i][k], fed[k][i], Same);
                }
            }
        });

    [Fact, Law]
    public void Flux_before_and_after_a_reflection_is_all_of_it() =>
        AnyBalance.ForAll((balance, powers, _) =>
        {
            // All that arrives has had no reflection yet, or set out again from one.
            double[] before = balance.BeforeReflection(powers);
            double[] again = balance.Flux([.. before.Select((f, i) =>
                f * (balance.MirrorArea(i) + balance.ScatteringArea(i)))]);
            double[] all = balance.Flux(powers);
            Assert.All(all.Zip(before.Zip(again, (b, a) => a + b)), pair =>
                Assert.Equal(pair.First, pair.Second, Same * (1 + pair.First)));
        });

    [Fact]
    public void A_room_that_loses_nothing_at_all_still_has_a_defined_flux()
    {
        var balance = new PowerBalance(1);
        Assert.Equal(1e6, balance.Flux([1])[0], 1);
        Assert.Equal(0, balance.LifeMetres(0));
    }

    [Fact]
    public void Energy_runs_four_volumes_over_the_leaving_area()
    {
        var balance = new PowerBalance(2);
        balance.Fill(0, 30);
        balance.Absorb(0, 7);
        balance.Exchange(0, 1, 2);
        balance.Exchange(0, Cells.Outdoors, 1);
        Assert.Equal(12, balance.LifeMetres(0), Same);
        Assert.Equal(0, balance.LifeMetres(Cells.Outdoors));
    }

    [Fact, Law]
    public void A_house_turns_all_it_is_sent_to_heat_or_lets_it_go() =>
        RoomedHouse.Any.ForAll(
            house =>
            {
                var diffuse = new DiffuseHouse(house);
                foreach (Spot spot in house.Spots)
                {
                    DiffuseField field = diffuse.Of(spot);
                    double reached = field.AtFirst.Sum();
                    Assert.InRange(reached, 0.5, 1 + Same); // the furnishing takes the rest
                    Assert.All(field.AllStrikes(diffuse.Shell), share => Assert.True(share >= 0));
                    Assert.Equal(reached, Taken(diffuse.Shell, field.AllStrikes(diffuse.Shell)), Same);
                }
            },
            cases: 40);

    // What surfaces, things and furnishing turn to heat, and what leaves the house, of all that strikes.
    private static double Taken(RoomShell shell, IReadOnlyList<double> strikes)
    {
        SurfaceExchange exchange = shell.Exchange;
        double taken = 0;
        foreach (int cell in Enumerable.Range(0, exchange.CellCount).Append(Cells.Outdoors))
        {
            double sent = 0;
            foreach ((int i, Facet facet) in shell.Surfaces.Of(cell).Index())
            {
                SheetPower power = shell.PowerOf(facet.Sheets);
                int other = shell.Surfaces.PartnerOf(cell, i);
                double here = strikes[exchange.Node(cell, i)], behind = other < 0 ? 0 : strikes[exchange.Node(facet.Other, other)];
                bool isLost = cell == Cells.Outdoors;
                taken += here * (1 - power.Passed - (isLost ? 0 : power.ReflectedNear));
                taken += isLost ? behind * power.Passed : 0;
                sent += (here * power.ReflectedNear) + (behind * power.Passed);
            }

            if (cell != Cells.Outdoors)
            {
                int things = exchange.Things(cell);
                taken += strikes[things] * (1 - exchange.ReflectedShares[things]);
                sent += strikes[things] * exchange.ReflectedShares[things];
                taken += sent * shell.Surfaces.FurnishingSquareMetres(cell) / exchange.SquareMetresOf(cell);
            }
        }

        return taken;
    }

    // With the area by which each cell turns power to heat or loses it out of doors.
    private static Gen<(PowerBalance Balance, double[] Powers, double[] Taking)> AnyBalance { get; } =
        from count in Gen.Int[1, 8]
        from absorbing in Area.Array[count]
        from losing in Gen.OneOf(Gen.Const(0.0), Area).Array[count]
        from powers in Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 1]).Array[count]
        from mirrors in Gen.OneOf(Gen.Const(0.0), Area).Array[count]
        from exchanges in Gen.Select(Gen.Int[0, count - 1], Gen.Int[0, count - 1], Area).Array[0, 12]
        select (Of(absorbing, losing, mirrors, exchanges), powers, absorbing.Zip(losing, (heat, lost) => heat + lost).ToArray());

    private static PowerBalance Of(
        double[] absorbing, double[] losing, double[] mirrors, (int One, int Other, double Area)[] exchanges)
    {
        var balance = new PowerBalance(absorbing.Length);
        for (int i = 0; i < absorbing.Length; i++)
        {
            balance.Absorb(i, absorbing[i]);
            balance.Exchange(i, Cells.Outdoors, losing[i]);
            balance.Reflect(i, mirrors[i], i % 2 == 0);
        }

        foreach ((int one, int other, double area) in exchanges)
        {
            balance.Exchange(one, other, area);
        }

        return balance;
    }
}
