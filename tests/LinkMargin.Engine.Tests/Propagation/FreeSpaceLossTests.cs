using CsCheck;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Propagation;

public sealed class FreeSpaceLossTests
{
    private static readonly Frequency Middle = Frequency.FromMegahertz(2440);

    [Fact]
    public void Matches_reference_values()
    {
        foreach (ReferenceRow row in ReferenceTable.Read("free-space.csv").Rows)
        {
            row.AssertPrinted(
                "loss_db",
                FreeSpaceLoss.Db(row.Number("distance_m"), Frequency.FromMegahertz(row.Number("frequency_mhz"))));
        }
    }

    [Fact, Law]
    public void The_practical_form_with_its_rounded_constant_reads_a_little_low() =>
        Gen.Select(Gen.Double[0.1, 100], Gen.Double[2400, 2484]).ForAll((metres, megahertz) =>
        {
            double rounded = 32.4 + (20 * Math.Log10(megahertz)) + (20 * Math.Log10(metres / 1000));
            Assert.Equal(0.0478, FreeSpaceLoss.Db(metres, Frequency.FromMegahertz(megahertz)) - rounded, 0.00005);
        });

    [Fact, Law]
    public void Ten_times_farther_loses_20_dB_more() =>
        Gen.Double[0.01, 1000].ForAll(metres =>
            Assert.Equal(20, FreeSpaceLoss.Db(10 * metres, Middle) - FreeSpaceLoss.Db(metres, Middle), 1e-9));

    [Fact, Law]
    public void Ten_times_the_frequency_loses_20_dB_more() =>
        Gen.Double[100, 10_000].ForAll(megahertz => Assert.Equal(
            20,
            FreeSpaceLoss.Db(3, Frequency.FromMegahertz(10 * megahertz)) - FreeSpaceLoss.Db(3, Frequency.FromMegahertz(megahertz)),
            1e-9));

    [Fact, Law]
    public void Farther_never_loses_less() =>
        Gen.Select(Gen.Double[0, 50], Gen.Double[0, 50]).ForAll((a, b) =>
            Assert.True(FreeSpaceLoss.Db(Math.Max(a, b), Middle) >= FreeSpaceLoss.Db(Math.Min(a, b), Middle)));

    [Fact]
    public void Is_held_at_zero_closer_than_the_formula_reaches()
    {
        double limit = Middle.WavelengthMetres / (4 * Math.PI);
        Assert.Equal(0, FreeSpaceLoss.Db(0, Middle));
        Assert.Equal(0, FreeSpaceLoss.Db(limit * 0.999, Middle));
        Assert.Equal(20 * Math.Log10(1.001), FreeSpaceLoss.Db(limit * 1.001, Middle), 1e-12);
    }

    [Theory]
    [InlineData(-1e-9)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Refuses_what_is_no_distance(double metres) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FreeSpaceLoss.Db(metres, Middle));
}
