using LinkMargin.Engine.Fields;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Tests.Contours;

namespace LinkMargin.Plots.Tests.Colours;

public class ColourRangeTests
{
    private static readonly Grid Grid = new(new(0, 0), 0.1, 100, 100);

    [Fact]
    public void A_range_ends_on_whole_steps_about_its_fields()
    {
        ColourRange range = ColourRange.Covering([Cones.FieldOf(Grid, p => p.X * 4.3)], 15);
        Assert.Equal(new ColourRange(0, 45), range);
    }

    [Fact]
    public void A_few_cells_beside_the_console_do_not_stretch_it()
    {
        ColourRange range = ColourRange.Covering([Cones.FieldOf(Grid, p => p is { X: < 0.4, Y: < 0.4 } ? 400 : 22)], 15);
        Assert.Equal(new ColourRange(5, 25), range);
    }

    [Fact]
    public void Cells_without_a_value_do_not_count()
    {
        ColourRange range = ColourRange.Covering([Cones.FieldOf(Grid, _ => double.NaN)], 15);
        Assert.Equal(new ColourRange(5, 25), range);
    }
}
