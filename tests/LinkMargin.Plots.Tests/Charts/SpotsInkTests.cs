using LinkMargin.Plots.Charts;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Charts;

/// <summary>Where the chart of seats against spots has its bars and lines.</summary>
public sealed class SpotsInkTests
{
    private const double PixelsPerPoint = 2;

    // The first spot is drawn in the sheet's strong colour.
    private static readonly SKColor First = Palette.Spot;

    [Theory]
    [InlineData(12, 20, 28, 15)]
    [InlineData(3, 7, 24, 18)]
    public void A_bar_runs_from_the_margin_to_count_on_to_the_high_one_and_the_line_stands_at_the_required(
        double atConfidence, double median, double high, double required)
    {
        // The axis runs over the whole tens about 0 and all that is drawn, with 1 dB to spare: −10 to 30 dB.
        (Pixels picture, SKRectI chart) = Render(new SpotBar(0, atConfidence, median, high, false), required);
        SKRectI bar = Pixels.BoxOf(picture.Where(chart, c => c == First));
        Assert.InRange(bar.Left - X(chart, atConfidence), -3, 3);
        Assert.InRange(bar.Right - X(chart, high), -3, 3);
        Assert.InRange(picture.Where(chart, c => c == Palette.Ink).Average(at => at.X) - X(chart, required), -2, 2);

        // The bar is hollow: between its ends only the dot at the median has more than its two rims in a column.
        int[] dot = [.. Enumerable.Range(bar.Left + 5, bar.Width - 10).Where(x => picture.Where(new SKRectI(x, bar.Top, x + 1, bar.Bottom), c => c == First).Count() > 8)];
        Assert.InRange(dot.Average() - X(chart, median), -2, 2);
        Assert.InRange(dot.Length, 8, 15); // 7.2 points across
    }

    [Fact]
    public void A_bar_is_full_where_the_seat_can_count_on_its_margin_and_hollow_where_not()
    {
        double Filled(bool passes)
        {
            (Pixels picture, SKRectI chart) = Render(new SpotBar(0, 12, 20, 28, passes), 10);
            SKRectI bar = Pixels.BoxOf(picture.Where(chart, c => c == First));
            var inside = new SKRectI(X(chart, 13), bar.MidY - 2, X(chart, 17), bar.MidY + 3);
            return picture.Share(inside, First);
        }

        Assert.Equal((1, 0), (Filled(true), Filled(false)));
    }

    [Fact]
    public void Margins_far_out_stay_on_the_chart()
    {
        // The axis runs from −410 to 70 dB, with lines every 50 dB: the first at −400, the last at 50 dB.
        (Pixels picture, SKRectI lines) = Render(new SpotBar(0, -400, -400, -400, false), 60);
        var chart = new SKRectI(lines.Left - 20, lines.Top, picture.Width, lines.Bottom);
        SKRectI bar = Pixels.BoxOf(picture.Where(chart, c => c == First));
        Assert.InRange(bar.MidX - lines.Left, -2, 2);
        double required = lines.Left + (460.0 / 450 * lines.Width);
        Assert.InRange(picture.Where(chart, c => c == Palette.Ink).Average(at => at.X) - required, -2, 2);
        Assert.True(bar.Left > picture.Ground().Left && required < picture.Ground().Right);
    }

    [Fact]
    public void Names_that_are_too_long_end_before_the_chart_and_the_edge_of_the_sheet()
    {
        // 60 characters, the most that a house file takes for a name, and its level's in brackets.
        string name = "a name that goes on and on and on and on and on and on to 60";
        SpotsRequest request = Request(new SpotBar(0, 12, 20, 28, true), 15) with
        {
            Spots = [$"{name} (level)"],
            Seats = [new SpotsSeat(name, name, 15, [new SpotBar(0, 12, 20, 28, true)])],
        };
        (Pixels picture, SKRectI chart) = Render(request);

        // Nothing is written 8 points before the chart, nor in the outer half of the sheet's margin of 16 points on the right; the
        // axis' last figure stands over its end.
        Assert.Empty(picture.Where(new SKRectI(chart.Left - 14, chart.Top + 4, chart.Left - 1, chart.Bottom - 4), Pixels.IsDark));
        Assert.NotEmpty(picture.Where(new SKRectI(0, chart.Top, chart.Left - 14, chart.Bottom), Pixels.IsDark));
        Assert.Equal(1, picture.Share(new SKRectI(picture.Width - 16, 0, picture.Width, picture.Height), Palette.Paper));
    }

    private static double X(double db) => (db + 10) / 40;

    private static int X(SKRectI chart, double db) => (int)Math.Round(chart.Left + (X(db) * chart.Width));

    private static (Pixels Picture, SKRectI Chart) Render(SpotBar bar, double requiredDb) => Render(Request(bar, requiredDb));

    private static SpotsRequest Request(SpotBar bar, double requiredDb) =>
        new("title", "caption", ["spot"], [new SpotsSeat("seat", "level", requiredDb, [bar])]) { Reached = "reached often" };

    // The seat's band gives the rows; the first and last line of the axis, which stand on its ends, the columns.
    private static (Pixels Picture, SKRectI Chart) Render(SpotsRequest request)
    {
        var picture = new Pixels(SpotsPicture.Render(request, SpotsPicture.FittingSize(request, PixelsPerPoint)));
        SKRectI band = picture.Ground();
        int row = band.Bottom + 3;
        int[] lines = [.. Enumerable.Range(0, picture.Width).Where(x => picture[x, row] != Palette.Paper)];
        return (picture, new SKRectI(lines.Min(), band.Top, lines.Max() + 1, band.Bottom));
    }
}
