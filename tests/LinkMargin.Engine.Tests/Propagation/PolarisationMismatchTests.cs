using System.Numerics;
using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Propagation;

/// <summary>Half of the power for antennas of unknown orientation, once, on every path and in both directions.</summary>
public sealed class PolarisationMismatchTests
{
    // Two dipoles, each turned every way, the wave between them along x: what the second takes of the field of the first, over what it
    // would take if they were turned to match, both with their own pattern.
    [Fact]
    public void The_mean_over_orientations_is_that_of_dipoles_turned_every_way()
    {
        (double Y, double Z)[] across = [.. Everywhere(600)];
        double taken = 0, matched = 0;
        foreach ((double y, double z) in across)
        {
            foreach ((double otherY, double otherZ) in across)
            {
                double both = (y * otherY) + (z * otherZ);
                taken += both * both;
                matched += ((y * y) + (z * z)) * ((otherY * otherY) + (otherZ * otherZ));
            }
        }

        Assert.Equal(PolarisationMismatch.MeanDb, 10 * Math.Log10(matched / taken), 0.001);
    }

    [Fact, Law]
    public void Any_two_states_and_their_partners_share_the_power() =>
        Gen.Double[-1, 1].Array[8, 8].ForAll(
            v =>
            {
                Complex p1 = new(v[0], v[1]), p2 = new(v[2], v[3]), q1 = new(v[4], v[5]), q2 = new(v[6], v[7]);
                double all = (Power(p1) + Power(p2)) * (Power(q1) + Power(q2));
                double one = Power((p1 * Complex.Conjugate(q1)) + (p2 * Complex.Conjugate(q2)));
                double partner = Power((p1 * q2) - (p2 * q1));
                Assert.Equal(all, one + partner, 1e-9);
            },
            cases: 100);

    [Theory]
    [InlineData(false, false, 1)]
    [InlineData(true, false, 0)]
    [InlineData(false, true, 0)]
    [InlineData(true, true, -1)]
    public void A_link_pays_it_once_less_what_its_gains_include(bool inConsole, bool inController, int times)
    {
        House house = SimpleHouse.OfWalls();
        house = house with
        {
            Console = house.Console with { GainIncludesMismatch = inConsole },
            Controller = house.Controller with { GainIncludesMismatch = inController },
        };
        LinkBudget budget = Links.OneLink.Of(house, new Point3(0, 0, 1), new Point3(4, 0, 1));
        var radios = new RadioPair(house.Console, house.Controller);

        Assert.All(budget.Directions, d => Assert.Equal(times * PolarisationMismatch.MeanDb, d.PolarisationDb, 1e-12));
        Assert.Equal(radios.GreatestLossDb - budget.PathLossDb, budget.MarginDb, 1e-9);
        Assert.All(budget.Directions, d => Assert.Equal(
            d.TransmitDbm + d.AntennaGainsDb - d.HandAndBodyDb - d.PolarisationDb - budget.PathLossDb, d.ReceivedDbm, 1e-9));
    }

    // Directions spread evenly over the sphere, a golden angle apart.
    private static IEnumerable<(double Y, double Z)> Everywhere(int count) => Enumerable.Range(0, count).Select(i =>
    {
        double z = ((2 * i) + 1.0 - count) / count, turn = i * Math.PI * (3 - Math.Sqrt(5));
        return (Math.Sqrt(1 - (z * z)) * Math.Sin(turn), z);
    });

    private static double Power(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);
}
