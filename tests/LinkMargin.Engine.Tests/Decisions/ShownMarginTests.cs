using System.Globalization;
using LinkMargin.Engine.Decisions;

namespace LinkMargin.Engine.Tests.Decisions;

public sealed class ShownMarginTests
{
    [Theory]
    [InlineData(15.0, "15.0")]
    [InlineData(14.999999, "14.9")]
    [InlineData(15.09, "15.0")]
    [InlineData(15.1, "15.1")]
    [InlineData(0.3, "0.3")] // 10 × 0.3 is 3 only when rounded
    [InlineData(-0.01, "-0.1")]
    [InlineData(-0.1, "-0.1")]
    [InlineData(0, "0.0")]
    [InlineData(-0.0, "0.0")]
    public void A_margin_is_rounded_down_to_a_tenth(double marginDb, string shown) => Assert.Equal(shown, ShownMargin.Text(marginDb));

    [Theory]
    [InlineData(14.9999, 15, "14.9", "15.0", -1)]
    [InlineData(15, 15, "15.0", "15.0", 0)]
    [InlineData(15.02, 15.04, "15.0", "15.04", -1)]
    [InlineData(15.06, 15.04, "15.06", "15.04", 0)]
    [InlineData(15.04, 15.04, "15.04", "15.04", 0)]
    [InlineData(15.0399, 15.04, "15.0", "15.04", -1)]
    [InlineData(12.34, 15.04, "12.3", "15.04", -27)]
    public void Beside_the_required_margin_it_has_the_decimals_it_needs(
        double marginDb, double requiredDb, string margin, string required, long headroomTenths)
    {
        Assert.Equal(margin, ShownMargin.Text(marginDb, requiredDb));
        Assert.Equal(required, ShownMargin.RequiredText(requiredDb));
        Assert.Equal(headroomTenths, ShownMargin.HeadroomTenths(marginDb, requiredDb));
    }

    /// <summary>The law the rule is for: who reads the figures alone comes to the verdict.</summary>
    [Fact]
    public void Shown_figures_never_contradict_the_verdict()
    {
        var random = new Random(20);
        for (int i = 0; i < 20_000; i++)
        {
            int decimals = random.Next(4);
            double requiredDb = Math.Round(60 * random.NextDouble(), decimals);
            double marginDb = random.Next(4) switch
            {
                0 => requiredDb,
                1 => Math.BitDecrement(requiredDb),
                2 => requiredDb + ((random.NextDouble() - 0.5) / 5),
                _ => (200 * random.NextDouble()) - 100,
            };
            bool passes = marginDb >= requiredDb;

            decimal shown = decimal.Parse(ShownMargin.Text(marginDb, requiredDb), CultureInfo.InvariantCulture);

            Assert.Equal(passes, shown >= decimal.Parse(ShownMargin.RequiredText(requiredDb), CultureInfo.InvariantCulture));
            Assert.Equal(passes, ShownMargin.HeadroomTenths(marginDb, requiredDb) >= 0);
            Assert.InRange(marginDb - (double)shown, -1e-9, 0.1 + 1e-9);
        }
    }
}
