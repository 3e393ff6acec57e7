using System.Globalization;
using CsCheck;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Propagation;

public sealed class FiniteScreenTests
{
    [Fact]
    public void Matches_worked_screens() =>
        Assert.All(ReferenceTable.Read("p526-finite-screen.csv").Rows, row =>
        {
            double[] lossesDb = LossesDb(row);
            row.AssertPrinted("least_db", FiniteScreen.LeastLossDb(lossesDb).Value);
            row.AssertPrinted("mean_db", FiniteScreen.MeanLossDb(lossesDb).Value);
        });

    [Fact]
    public void Another_edge_never_costs_more_and_the_mean_is_never_below_the_least() =>
        Gen.Double[0, 40].Array[1, 5].Sample(lossesDb =>
        {
            Assert.True(FiniteScreen.MeanLossDb(lossesDb).Value >= FiniteScreen.LeastLossDb(lossesDb).Value - 1e-9);
            Assert.True(FiniteScreen.MeanLossDb(lossesDb).Value <= lossesDb.Min() + 1e-9);
            Assert.True(FiniteScreen.MeanLossDb([.. lossesDb, 20]).Value <= FiniteScreen.MeanLossDb(lossesDb).Value + 1e-9);
            Assert.True(FiniteScreen.LeastLossDb([.. lossesDb, 20]).Value <= FiniteScreen.LeastLossDb(lossesDb).Value + 1e-9);
        });

    [Fact]
    public void One_edge_is_a_knife_edge() =>
        Gen.Double[0, 60].Sample(lossDb =>
        {
            Assert.Equal(lossDb, FiniteScreen.MeanLossDb(lossDb).Value, 1e-9);
            Assert.Equal(lossDb, FiniteScreen.LeastLossDb(lossDb).Value, 1e-9);
        });

    [Fact]
    public void Says_when_the_line_is_not_blocked_and_never_gives_a_gain()
    {
        Assert.True(FiniteScreen.MeanLossDb(KnifeEdge.LossDb(0), 12).IsComfortable);
        Assert.False(FiniteScreen.MeanLossDb(KnifeEdge.LossDb(-0.001), 12).IsComfortable);
        Assert.Equal(new Estimate<double>(0, FiniteScreen.LeastLossDb(0, 0).Caution), FiniteScreen.LeastLossDb(0, 0));
    }

    [Fact]
    public void Refuses_no_edges_and_gains()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => FiniteScreen.MeanLossDb());
        Assert.Throws<ArgumentOutOfRangeException>(() => FiniteScreen.LeastLossDb(10, -0.001));
    }

    private static double[] LossesDb(ReferenceRow row)
    {
        double wavelength = Frequency.FromMegahertz(2440).WavelengthMetres;
        return
        [
            .. row.Text("edges_m").Split(" + ").Select(height => KnifeEdge.LossDb(KnifeEdge.Parameter(
                double.Parse(height, CultureInfo.InvariantCulture), row.Number("first_m"), row.Number("second_m"), wavelength).Value)),
        ];
    }
}
