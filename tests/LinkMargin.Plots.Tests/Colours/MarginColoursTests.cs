using LinkMargin.Plots.Colours;

namespace LinkMargin.Plots.Tests.Colours;

public class MarginColoursTests
{
    private static readonly MarginColours Colours = new(new ColourRange(-10, 50), 5);

    [Fact]
    public void One_tone_holds_from_a_line_to_just_below_the_next()
    {
        Assert.Equal(Colours.Of(15), Colours.Of(19.999));
        Assert.NotEqual(Colours.Of(15), Colours.Of(14.999));
        Assert.Equal(Colours.Of(-0.001), Colours.Of(-5));
    }

    [Fact]
    public void Beyond_the_range_the_outermost_tones_hold()
    {
        Assert.Equal(Colours.Of(-10), Colours.Of(-300));
        Assert.Equal(Colours.Of(49), Colours.Of(50));
        Assert.Equal(Colours.Of(49), Colours.Of(300));
    }

    [Theory]
    [InlineData(10, 10, 5)]
    [InlineData(10, 0, 5)]
    [InlineData(0, double.NaN, 5)]
    [InlineData(0, double.PositiveInfinity, 5)]
    [InlineData(0, 60, 0)]
    [InlineData(0, 60, -5)]
    [InlineData(0, 60, double.NaN)]
    [InlineData(0, 60, 0.001)]
    public void A_range_or_step_that_makes_no_scale_is_refused(double least, double greatest, double step) =>
        Assert.ThrowsAny<ArgumentException>(() => new MarginColours(new ColourRange(least, greatest), step));

    [Fact]
    public void Lines_lie_inside_the_range() =>
        Assert.Equal([-5, 0, 5, 10, 15, 20, 25, 30, 35, 40, 45], Colours.Lines());

    [Fact]
    public void A_range_that_does_not_end_on_a_step_keeps_its_ends() =>
        Assert.Equal([0, 5], new MarginColours(new ColourRange(-3, 7), 5).Lines());
}
