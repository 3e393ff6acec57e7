using CsCheck;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Tests.Layout;

public sealed class TenthsTests
{
    [Theory]
    [InlineData(0.04, "0.0")]
    [InlineData(-0.04, "0.0")]
    [InlineData(0.05, "0.1")]
    [InlineData(-0.05, "-0.1")]
    [InlineData(17.84, "17.8")]
    [InlineData(-3.26, "-3.3")]
    [InlineData(1234.5, "1234.5")]
    public void A_figure_is_printed_to_the_nearest_tenth_and_zero_has_no_sign(double value, string printed) =>
        Assert.Equal(printed, Tenths.Show(value));

    [Fact, Law]
    public void Apportioned_items_sum_to_the_total_and_stay_within_a_tenth() =>
        Gen.Double[-60, 90].Array[1, 12].ForAll(items =>
        {
            long total = Tenths.Of(items.Sum());

            long[] tenths = Tenths.Apportion(items, total);

            Assert.Equal(total, tenths.Sum());
            Assert.All(items.Zip(tenths), pair => Assert.InRange(pair.Second - (10 * pair.First), -1.0001, 1.0001));
        });

    [Fact, Law]
    public void Items_that_are_whole_tenths_are_printed_as_they_are() =>
        Gen.Select(Gen.Int[-300, 300].Array[1, 8], Gen.Double[40, 80]).ForAll((table, freeSpaceDb) =>
        {
            double[] items = [freeSpaceDb, .. table.Select(t => t / 10.0)];

            long[] tenths = Tenths.Apportion(items, Tenths.Of(items.Sum()));

            Assert.Equal(table.Select(t => (long)t), tenths.Skip(1));
        });
}
