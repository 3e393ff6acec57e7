using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Drawing;

namespace LinkMargin.Plots.Tests.Drawing;

public class LengthTicksTests
{
    [Theory]
    [InlineData(0.7, LengthUnit.Metre, 1)]
    [InlineData(1.0, LengthUnit.Metre, 1)]
    [InlineData(1.01, LengthUnit.Metre, 2)]
    [InlineData(1.4, LengthUnit.Foot, 5)]
    [InlineData(1e6, LengthUnit.Metre, 1000)]
    public void A_step_is_the_next_round_length(double metres, LengthUnit unit, double expected) =>
        Assert.Equal(expected, LengthTicks.StepAtLeast(metres, unit));

    [Theory]
    [InlineData(2.4, LengthUnit.Metre, 2)]
    [InlineData(2.0, LengthUnit.Metre, 2)]
    [InlineData(1.99, LengthUnit.Metre, 1)]
    [InlineData(2.4, LengthUnit.Foot, 5)]
    [InlineData(0.001, LengthUnit.Metre, 0.1)]
    public void A_scale_bar_is_the_last_round_length_that_fits(double metres, LengthUnit unit, double expected) =>
        Assert.Equal(expected, LengthTicks.LengthAtMost(metres, unit));

    [Fact]
    public void Ticks_stand_on_round_lengths_between_the_ends()
    {
        Assert.Equal([(-1, "\u22121"), (0, "0"), (1, "1"), (2, "2")], LengthTicks.Between(-1.5, 2.2, 1, LengthUnit.Metre));
        Assert.Equal([0.0, 5 * 0.3048], LengthTicks.Between(-0.1, 2, 5, LengthUnit.Foot).Select(t => t.Metres));
    }

    [Theory]
    [InlineData(3.4, LengthUnit.Metre, "3.40")]
    [InlineData(3.048, LengthUnit.Foot, "10′")]
    [InlineData(3.81, LengthUnit.Foot, "12′ 6″")]
    [InlineData(3.047, LengthUnit.Foot, "10′")]
    public void Lengths_are_written_as_a_plan_writes_them(double metres, LengthUnit unit, string expected) =>
        Assert.Equal(expected, LengthTicks.Written(metres, unit));

    [Theory]
    [InlineData(17.84, 15, "17.8 dB")]
    [InlineData(14.999, 15, "14.9 dB")]
    [InlineData(15, 15, "15.0 dB")]
    [InlineData(-0.02, 15, "\u22120.1 dB")]
    [InlineData(0, 15, "0.0 dB")]
    [InlineData(15.049, 15.04, "15.04 dB")]
    public void Margins_are_rounded_down_so_that_a_near_miss_reads_as_one(double marginDb, double requiredDb, string expected) =>
        Assert.Equal(expected, MarginText.WithUnit(marginDb, requiredDb));
}
