using LinkMargin.Plots.Contours;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Contours;

public class ContourTextsTests
{
    private static readonly LabelBox Frame = new(0, 0, 1000, 800);

    [Fact]
    public void Figures_stand_on_their_line_and_never_upside_down()
    {
        SKPoint[] circle = [.. Enumerable.Range(0, 361).Select(i => OnCircle(i * MathF.PI / 180))];
        ContourText[] texts = [.. new ContourTexts(Frame, []).Place(circle, "15", 30, 16, everyPixels: 200, _ => true)];
        Assert.InRange(texts.Length, 5, 10);
        Assert.All(texts, t => Assert.Equal(300, double.Hypot(t.X - 500, t.Y - 400), 0.1));
        Assert.All(texts, t => Assert.InRange(t.TurnDegrees, -90, 90));
        Assert.All(texts, t => Assert.True(Frame.Contains(t.Box)));
    }

    [Fact]
    public void Taken_ground_is_left_alone()
    {
        var taken = new LabelBox(0, 0, 600, 800);
        SKPoint[] line = [new(10, 400), new(990, 400)];
        ContourText[] texts = [.. new ContourTexts(Frame, [taken]).Place(line, "15", 30, 16, everyPixels: 100, _ => true)];
        Assert.NotEmpty(texts);
        Assert.All(texts, t => Assert.False(t.Box.Overlaps(taken)));
    }

    [Fact]
    public void Where_lines_crowd_there_is_no_figure()
    {
        SKPoint[] line = [new(10, 400), new(990, 400)];
        ContourText[] texts = [.. new ContourTexts(Frame, []).Place(line, "15", 30, 16, everyPixels: 100, at => at.X > 700)];
        Assert.NotEmpty(texts);
        Assert.All(texts, t => Assert.True(t.X > 700));
    }

    [Fact]
    public void A_line_shorter_than_its_figure_has_none() =>
        Assert.Empty(new ContourTexts(Frame, []).Place([new(10, 10), new(50, 10)], "15", 30, 16, everyPixels: 100, _ => true));

    [Fact]
    public void A_sharp_bend_has_no_figure_on_it()
    {
        SKPoint[] zigzag = [.. Enumerable.Range(0, 60).Select(i => new SKPoint(100 + (10 * i), i % 2 == 0 ? 400 : 412))];
        Assert.Empty(new ContourTexts(Frame, []).Place(zigzag, "15", 30, 16, everyPixels: 100, _ => true));
    }

    private static SKPoint OnCircle(float angle) => new(500 + (300 * MathF.Cos(angle)), 400 + (300 * MathF.Sin(angle)));
}
