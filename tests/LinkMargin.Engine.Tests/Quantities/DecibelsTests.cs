using CsCheck;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Quantities;

public sealed class DecibelsTests
{
    [Theory]
    [InlineData(0, 1)]
    [InlineData(10, 10)]
    [InlineData(-20, 0.01)]
    [InlineData(3, 1.9953)]
    public void Are_ten_times_the_logarithm_of_a_power_ratio(double db, double ratio) =>
        Assert.Equal(ratio, Decibels.ToPowerRatio(db), 0.00005);

    [Fact, Law]
    public void Come_back_from_a_power_ratio() =>
        Gen.Double[-200, 200].ForAll(db => Assert.Equal(db, Decibels.FromPowerRatio(new Decibels(db).PowerRatio), 1e-9));

    [Fact, Law]
    public void Add_where_ratios_multiply() =>
        Gen.Select(Gen.Double[-50, 50], Gen.Double[-50, 50]).ForAll((a, b) =>
        {
            double product = Decibels.ToPowerRatio(a) * Decibels.ToPowerRatio(b);
            Assert.Equal((new Decibels(a) + new Decibels(b)).Db, Decibels.FromPowerRatio(product), 1e-9);
            Assert.Equal(new Decibels(a), new Decibels(a) + new Decibels(b) - new Decibels(b), Near);
        });

    [Fact, Law]
    public void Are_ordered_as_their_numbers() =>
        Gen.Select(Gen.Double[-50, 50], Gen.Double[-50, 50]).ForAll((a, b) =>
        {
            Decibels first = new(a), second = new(b);
            Assert.Equal(a < b, first < second);
            Assert.Equal(a > b, first > second);
            Assert.Equal(a <= b, first <= second);
            Assert.Equal(a >= b, first >= second);
            Assert.Equal(a.CompareTo(b), first.CompareTo(second));
        });

    private static bool Near(Decibels a, Decibels b) => Math.Abs(a.Db - b.Db) < 1e-9;
}
