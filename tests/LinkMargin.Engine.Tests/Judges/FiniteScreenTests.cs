using CsCheck;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Judges;

public sealed class FiniteScreenTests
{
    // Worked outside this program from the formulas as the class states them, at 2440 MHz: heights over the line in metres.
    [Theory]
    [InlineData(2, 3, 7.098, 11.291, 0.3, 0.3, 0.9)] // metal rack 0.6 m wide, its top 0.9 m above the line
    [InlineData(1, 3, 8.213, 11.223, 0.225, 0.225)] // a person as a strip 0.45 m wide
    [InlineData(2, 3, 5.421, 8.558, 0.1, 0.5, 0.9)] // the rack, off the line
    public void Matches_worked_screens(double first, double second, double leastDb, double meanDb, params double[] heights)
    {
        double wavelength = Frequency.FromMegahertz(2440).WavelengthMetres;
        double[] lossesDb =
        [
            .. heights.Select(height => KnifeEdge.LossDb(ExactKnifeEdge.Parameter(height, first, second, wavelength))),
        ];
        Assert.Equal(leastDb, FiniteScreen.LeastLossDb(lossesDb), 0.0005);
        Assert.Equal(meanDb, FiniteScreen.MeanLossDb(lossesDb), 0.0005);
    }

    [Fact, Law]
    public void Another_edge_never_costs_more_and_the_mean_is_never_below_the_least() =>
        Gen.Double[0, 40].Array[1, 5].ForAll(lossesDb =>
        {
            Assert.True(FiniteScreen.MeanLossDb(lossesDb) >= FiniteScreen.LeastLossDb(lossesDb) - 1e-9);
            Assert.True(FiniteScreen.MeanLossDb(lossesDb) <= lossesDb.Min() + 1e-9);
            Assert.True(FiniteScreen.MeanLossDb([.. lossesDb, 20]) <= FiniteScreen.MeanLossDb(lossesDb) + 1e-9);
            Assert.True(FiniteScreen.LeastLossDb([.. lossesDb, 20]) <= FiniteScreen.LeastLossDb(lossesDb) + 1e-9);
        });

    [Fact, Law]
    public void One_edge_is_a_knife_edge() =>
        Gen.Double[0, 60].ForAll(lossDb =>
        {
            Assert.Equal(lossDb, FiniteScreen.MeanLossDb(lossDb), 1e-9);
            Assert.Equal(lossDb, FiniteScreen.LeastLossDb(lossDb), 1e-9);
        });

    [Fact]
    public void Never_gives_a_gain() => Assert.Equal((0, 0), (FiniteScreen.LeastLossDb(0, 0), FiniteScreen.MeanLossDb(0, 0)));

    [Fact]
    public void Refuses_no_edges_and_gains()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => FiniteScreen.MeanLossDb());
        Assert.Throws<ArgumentOutOfRangeException>(() => FiniteScreen.LeastLossDb(10, -0.001));
    }
}
