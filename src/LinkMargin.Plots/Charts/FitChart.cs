using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using ScottPlot;
using SkiaSharp;
using Palette = LinkMargin.Plots.Drawing.Palette;

namespace LinkMargin.Plots.Charts;

/// <summary>One square chart: predicted level to the right, measured level up; a correct model has its measurements on the diagonal.</summary>
internal sealed class FitChart(LabelBox frame, (double Least, double Greatest) range, double pixelsPerPoint)
{
    /// <summary>The band beside the diagonal.</summary>
    public static readonly SKColor BandColour = new(0xDF, 0xE6, 0xEA);

    private const double TitlePoints = 11;
    private const double LetterPoints = 9;
    private const double MarkPoints = 6.4;

    /// <summary>Whether the left axis has numbers and a name.</summary>
    public bool HasLeftFigures { get; init; }

    /// <summary>Space above the frame, points.</summary>
    public double HeadPoints { get; init; }

    /// <summary>Half the height of the band beside the diagonal, dB.</summary>
    public double NoiseDb { get; init; }

    /// <summary>The mark of a measurement: a disc; a ring if it looks wrong; a triangle pointing down if nothing was heard.</summary>
    public static MarkerStyle Mark(bool isHeard, bool looksBad, double pixelsPerPoint)
    {
        bool isRing = isHeard && looksBad;
        return new MarkerStyle(
            isHeard ? MarkerShape.FilledCircle : MarkerShape.FilledTriangleDown,
            (float)(MarkPoints * pixelsPerPoint * (isHeard ? 1 : 1.15)),
            SheetPlot.ToColor(isHeard && !looksBad ? Palette.Ink : Palette.Paper))
        {
            OutlineColor = SheetPlot.ToColor(isRing ? Palette.Spot : isHeard ? Palette.Paper : Palette.Ink),
            OutlineWidth = (float)((isRing ? 1.6 : 1.1) * pixelsPerPoint),
        };
    }

    /// <summary>Draws the chart.</summary>
    public void Draw(SKCanvas canvas, FitPanel panel)
    {
        using var plot = new SheetPlot(frame, pixelsPerPoint);
        plot.Plot.DataBackground.Color = SheetPlot.ToColor(Palette.Ground);
        plot.Plot.Axes.SetLimits(range.Least, range.Greatest, range.Least, range.Greatest);
        plot.StyleDecibels(plot.Plot.Axes.Bottom, "predicted level (dBm)");
        plot.StyleDecibels(plot.Plot.Axes.Left, HasLeftFigures ? "measured level (dBm)" : null);
        AddDiagonal(plot.Plot.Add);

        // Bad measurements last, so that they are on top.
        foreach (IGrouping<(bool, bool), FitPoint> kind in panel.Points.OrderBy(p => p.LooksBad).GroupBy(p => (p.IsHeard, p.LooksBad)))
        {
            plot.Plot.Add.ScatterPoints(kind.Select(p => new Coordinates(p.PredictedDbm, p.MeasuredDbm)).ToArray())
                .MarkerStyle = Mark(kind.Key.Item1, kind.Key.Item2, pixelsPerPoint);
        }

        plot.Draw(canvas);
        DrawLabels(canvas, plot, panel.Points);
        DrawHead(canvas, panel);
    }

    private void AddDiagonal(PlottableAdder add)
    {
        double low = range.Least - (2 * NoiseDb), high = range.Greatest + (2 * NoiseDb);
        ScottPlot.Plottables.Polygon band = add.Polygon(
            new Coordinates[] { new(low, low - NoiseDb), new(high, high - NoiseDb), new(high, high + NoiseDb), new(low, low + NoiseDb) });
        band.FillColor = SheetPlot.ToColor(BandColour);
        band.LineWidth = 0;
        ScottPlot.Plottables.LinePlot diagonal = add.Line(low, low, high, high);
        diagonal.LineColor = SheetPlot.ToColor(Palette.Ink);
        diagonal.LineWidth = (float)pixelsPerPoint;
        diagonal.MarkerSize = 0;
    }

    private void DrawHead(SKCanvas canvas, FitPanel panel)
    {
        using Lettering bold = new(TitlePoints * pixelsPerPoint, isBold: true);
        using Lettering plain = new(LetterPoints * pixelsPerPoint, isBold: false);
        double top = frame.Top - (HeadPoints * pixelsPerPoint);
        bold.WriteMiddle(canvas, bold.Fitted(panel.Title, frame.Width), frame.Left, top + (8 * pixelsPerPoint), Palette.Ink);
        plain.WriteMiddle(canvas, plain.Fitted(panel.Figures, frame.Width), frame.Left, top + (22 * pixelsPerPoint), Palette.SoftInk);
    }

    // A label goes beside, above or below its mark, inside the frame where it covers the fewest marks: the library places none.
    private void DrawLabels(SKCanvas canvas, SheetPlot plot, IReadOnlyList<FitPoint> points)
    {
        using Lettering plain = new(LetterPoints * pixelsPerPoint, isBold: false);
        double gap = 7 * pixelsPerPoint, half = 6 * pixelsPerPoint, reach = 3.5 * pixelsPerPoint;
        (double X, double Y)[] marks = [.. points.Select(p => (plot.PixelX(p.PredictedDbm), plot.PixelY(p.MeasuredDbm)))];
        foreach ((FitPoint point, (double x, double y)) in points.Zip(marks).Where(one => one.First.Label is not null))
        {
            string text = plain.Fitted(point.Label!, frame.Width - (2 * gap));
            double width = plain.WidthOf(text);
            LabelBox best = new (double Left, double Middle)[]
                {
                    (x + gap, y), (x - gap - width, y), (x - width, y - (2 * half)), (x, y - (2 * half)),
                    (x - width, y + (2 * half)), (x, y + (2 * half)),
                }
                .Select(at => (Left: Math.Clamp(at.Left, frame.Left + (gap / 2), frame.Right - width - (gap / 2)), at.Middle))
                .Select(at => new LabelBox(at.Left, at.Middle - half, at.Left + width, at.Middle + half))
                .MinBy(box => marks.Count(mark => Covers(box, mark)) + (box.Top < frame.Top || box.Bottom > frame.Bottom ? points.Count : 0))!;
            plain.WriteMiddleRimmed(
                canvas, text, best.Left, best.CentreY, Palette.Ink, Palette.Ground, 1.5 * pixelsPerPoint, SKTextAlign.Left);
        }

        bool Covers(LabelBox box, (double X, double Y) mark) =>
            mark.X > box.Left - reach && mark.X < box.Right + reach && mark.Y > box.Top - reach && mark.Y < box.Bottom + reach;
    }
}
