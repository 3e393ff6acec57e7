using CsCheck;
using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Measuring;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Uncertainty;
using MathNet.Numerics.Distributions;
using Xunit.Abstractions;

namespace LinkMargin.Engine.Tests.Fitting;

/// <summary>
/// Houses whose materials and links differ from the tables by as much as the spreads say, read at some links: how often the
/// margins that are then told hold. It is the whole chain, from readings over the fit to the margin to count on.
/// </summary>
public sealed class MeasuredMarginCoverageTests(ITestOutputHelper output)
{
    // All of a material in a house has its whole shift in common here, so that the truth can be built as a house.
    private static readonly Spreads Some = new(4, 0, 3, 0.05, 20, 10, 12);

    [Fact]
    public void Margins_of_read_and_unread_links_hold_as_often_as_they_say()
    {
        const int Houses = 200;
        int read = 0, readHeld = 0, readInside = 0, other = 0, otherHeld = 0, otherInside = 0, drawn = 0;
        double narrower = 0;
        for (uint seed = 0; drawn < Houses; seed++)
        {
            House made = RoomedHouse.Any.Generate(new PCG(seed, seed), null, out _);
            if (made.Spots.Count == 0)
            {
                continue;
            }

            drawn++;
            var random = new Random((int)seed);
            House table = WithSeats(made, random);
            House truth = TrueHouse(table, random);
            LinkModel model = new(table, ModelDepth.Direct), real = new(truth, ModelDepth.Direct);
            Spot spot = table.Spots[0];
            double[] ownDb = [.. table.Seats.Select(_ => Normal.Sample(random, 0, Some.ModelDb))];
            double offsetDbm = Normal.Sample(random, Some.DeviceOffsetDbm, Some.DeviceDb);
            double[] trueLossDb = [.. table.Seats.Select((seat, i) => LinkEvaluation.Budget(real, spot, seat).PathLossDb + ownDb[i])];
            var transmitter = new MeasurementEnd(spot.Name, spot.LevelIndex, spot.Plan, spot.HeightMetres) { Spot = spot };
            Measurement[] measurements =
            [
                .. table.Seats.Take(10).Select((seat, i) => new Measurement(
                    transmitter,
                    new MeasurementEnd(seat.Name, seat.LevelIndex, seat.Plan, seat.HandsMetres) { Seat = seat },
                    "phone",
                    offsetDbm - trueLossDb[i] + Normal.Sample(random, 0, Some.MeasurementDb),
                    true)),
            ];
            FittedLosses losses = HouseFit.Of(model, Some, measurements).Losses;
            House fitted = losses.ApplyTo(table);
            LinkModel ready = new(fitted, ModelDepth.Direct);
            var uncertainty = HouseUncertainty.Of(ready, [spot], fitted.Seats, new UncertaintyBasis(Some, losses) { Draws = 200 });
            for (int i = 0; i < table.Seats.Count; i++)
            {
                LinkBudget budget = LinkEvaluation.Budget(ready, spot, fitted.Seats[i]);
                double margin = ready.Radios.GreatestLossDb - trueLossDb[i];
                DrawnMargins reported = uncertainty.With(budget);
                bool held = margin >= reported.ExceededDb(0.9), inside = margin >= reported.ExceededDb(0.95) && margin <= reported.ExceededDb(0.05);
                if (i < 10)
                {
                    (read, readHeld, readInside) = (read + 1, readHeld + (held ? 1 : 0), readInside + (inside ? 1 : 0));
                    narrower += reported.SpreadDb;
                }
                else
                {
                    (other, otherHeld, otherInside) = (other + 1, otherHeld + (held ? 1 : 0), otherInside + (inside ? 1 : 0));
                }
            }
        }

        output.WriteLine(FormattableString.Invariant(
            $"read links ({read}): counted on {100.0 * readHeld / read:0.0} %, 90 % intervals {100.0 * readInside / read:0.0} %, mean spread {narrower / read:0.0} dB"));
        output.WriteLine(FormattableString.Invariant(
            $"other links ({other}): counted on {100.0 * otherHeld / other:0.0} %, 90 % intervals {100.0 * otherInside / other:0.0} %"));
        Assert.InRange((double)readHeld / read, 0.85, 0.95);
        Assert.InRange((double)readInside / read, 0.85, 0.95);
        Assert.InRange((double)otherHeld / other, 0.85, 0.95);
        Assert.InRange((double)otherInside / other, 0.85, 0.95);
    }

    // Ten links to read and ten that are not, in the house's rooms; radios are exactly as told, since readings say nothing of them.
    private static House WithSeats(House house, Random random)
    {
        var rooms = house.Levels.SelectMany((level, i) => level.Rooms.Select(room => (Level: i, Room: room))).ToArray();
        return house with
        {
            Seats =
            [
                .. Enumerable.Range(0, 20).Select(i =>
                {
                    (int level, Room room) = rooms[random.Next(rooms.Length)];
                    Point2 a = room.Outline.Least, b = room.Outline.Greatest;
                    double x = 0.1 + (0.8 * random.NextDouble()), y = 0.1 + (0.8 * random.NextDouble());
                    return new Seat($"seat {i}", level, new Point2(a.X + (x * (b.X - a.X)), a.Y + (y * (b.Y - a.Y))), 0.7, null, 15);
                }),
            ],
            Console = house.Console with { SpreadDb = 0 },
            Controller = house.Controller with { SpreadDb = 0 },
        };
    }

    private static House TrueHouse(House table, Random random) => new FittedLosses(
        table.Name,
        0,
        [.. HousePriors.Of(table, Some).Select(prior => new FittedMaterial(prior.Name, prior.LossDb, prior.SpreadDb, Normal.Sample(random, 0, 1) * prior.SpreadDb, 0))],
        [],
        (_, _) => 0).ApplyTo(table);
}
