using CsCheck;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Quantities;

public sealed class PowerLevelTests
{
    private static readonly Gen<PowerLevel> Level = Gen.Double[-5000, 60].Select(PowerLevel.FromDbm);

    [Theory] // 10 log10(10^(a/10) + 10^(b/10)), by hand
    [InlineData(-60, -60, -56.9897)]
    [InlineData(-60, -70, -59.5861)]
    [InlineData(0, -100, 0.0000)]
    public void Powers_sum(double a, double b, double expected) =>
        Assert.Equal(expected, PowerLevel.SumOfPowers(new(a), new(b)).Dbm, 0.00005);

    [Fact, Law]
    public void A_second_signal_never_lowers_a_level_and_adds_3_dB_at_most() =>
        Gen.Select(Level, Level).ForAll((a, b) =>
        {
            double sum = PowerLevel.SumOfPowers(a, b).Dbm, stronger = Math.Max(a.Dbm, b.Dbm);
            Assert.InRange(sum, stronger, stronger + 3.0103);
            Assert.Equal(sum, PowerLevel.SumOfPowers(b, a).Dbm);
        });

    [Fact, Law]
    public void Raising_both_raises_the_sum_as_much() =>
        Gen.Select(Gen.Double[-100, 0], Gen.Double[-100, 0], Gen.Double[-30, 30]).ForAll((a, b, gain) => Assert.Equal(
            PowerLevel.SumOfPowers(new(a), new(b)).Dbm + gain, PowerLevel.SumOfPowers(new(a + gain), new(b + gain)).Dbm, 1e-9));

    [Fact]
    public void Levels_and_ratios_add_and_part_as_they_should()
    {
        PowerLevel received = PowerLevel.FromDbm(4) + new Decibels(-2) - new Decibels(60);
        Assert.Equal(-58, received.Dbm);
        Assert.Equal(32, (received - PowerLevel.FromDbm(-90)).Db);
    }
}
