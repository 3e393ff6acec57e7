using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Contours;

/// <summary>Contour lines with their numbers; that of the required margin is boldest and is drawn last.</summary>
internal sealed class ContourLayer(
    PlanView view,
    FieldGround ground,
    FieldSurface surface,
    MarginColours colours,
    double requiredDb,
    IReadOnlyList<LabelBox> taken) : PlanLayer(view)
{
    // Shorter lines are specks of one or two cells.
    private const double LeastLengthPoints = 9;
    private const double TextEveryPoints = 190;

    // Lines closer together than this share of a number's height have no numbers.
    private const double CrowdedShare = 0.9;

    /// <summary>Size of the numbers, points; those of the required margin are slightly larger.</summary>
    public double FigurePoints { get; init; } = 8.5;

    /// <summary>Margins that only some seats require: bold and dashed.</summary>
    public IReadOnlyList<double> AlsoRequiredDb { get; init; } = [];

    protected override void Draw(SKCanvas canvas)
    {
        canvas.Save();
        ground.Clip(canvas, View, bare: false);
        using var figures = new Lettering(View.Points(FigurePoints), isBold: false);
        using var heavyFigures = new Lettering(View.Points(FigurePoints + 1), isBold: true);
        var texts = new ContourTexts(View.Frame, taken);
        IReadOnlyList<SKPoint[]> required = LinesAt(requiredDb);
        List<(IReadOnlyList<SKPoint[]> Lines, List<ContourText> Texts)> also = [];
        List<ContourText> heavyTexts = [.. required.SelectMany(l => Texts(texts, l, requiredDb, heavyFigures))];
        foreach (double margin in AlsoRequiredDb)
        {
            IReadOnlyList<SKPoint[]> lines = LinesAt(margin);
            also.Add((lines, [.. lines.SelectMany(l => Texts(texts, l, margin, heavyFigures))]));
        }

        DrawAll(canvas, figures, texts);
        foreach ((IReadOnlyList<SKPoint[]> lines, List<ContourText> placed) in also)
        {
            DrawRequired(canvas, lines, placed, heavyFigures, isDashed: true);
        }

        DrawRequired(canvas, required, heavyTexts, heavyFigures, isDashed: false);
        canvas.Restore();
    }

    private void DrawAll(SKCanvas canvas, Lettering figures, ContourTexts texts)
    {
        using SKPaint thin = Pen.Line(Palette.Ink.WithAlpha(150), View.Points(0.5));
        using SKPaint tenth = Pen.Line(Palette.Ink.WithAlpha(200), View.Points(0.9));
        foreach (double margin in colours.Lines().Where(m => m != requiredDb && !AlsoRequiredDb.Contains(m)))
        {
            bool isTenth = Math.Abs(Math.IEEERemainder(margin, 10)) < 1e-9;
            IReadOnlyList<SKPoint[]> lines = LinesAt(margin);
            List<ContourText> placed = [.. lines.SelectMany(l => Texts(texts, l, margin, figures))];
            Stroke(canvas, lines, placed, [isTenth ? tenth : thin]);
            Write(canvas, placed, figures);
        }
    }

    private void DrawRequired(SKCanvas canvas, IReadOnlyList<SKPoint[]> lines, List<ContourText> placed, Lettering figures, bool isDashed)
    {
        using SKPaint casing = RequiredLine.Casing(View.PixelsPerPoint, isDashed), heavy = RequiredLine.Ink(View.PixelsPerPoint, isDashed);
        Stroke(canvas, lines, placed, [casing, heavy]);
        Write(canvas, placed, figures);
    }

    private List<SKPoint[]> LinesAt(double margin) =>
    [
        .. ContourTracer.Trace(surface, margin)
            .Select(l => l.Points.Select(View.Pixel).ToArray())
            .Where(l => LengthOf(l) >= View.Points(LeastLengthPoints)),
    ];

    private IEnumerable<ContourText> Texts(ContourTexts texts, SKPoint[] line, double margin, Lettering figures)
    {
        string text = MarginText.Bare(margin);
        double height = figures.CapHeight + View.Points(3), room = margin == requiredDb || AlsoRequiredDb.Contains(margin) ? 0 : CrowdedShare * height;
        double width = figures.WidthOf(text) + View.Points(4);
        return texts.Place(line, text, width, height, View.Points(TextEveryPoints), at => SpacingAt(at) >= room);
    }

    // The distance between contour lines where the surface is as steep as here, pixels.
    private double SpacingAt(SKPoint at)
    {
        double x = View.MetresX(at.X), y = View.MetresY(at.Y), step = surface.Grid.CellMetres / 2;
        double east = (surface.At(x + step, y) - surface.At(x - step, y)) / (2 * step);
        double north = (surface.At(x, y + step) - surface.At(x, y - step)) / (2 * step);
        double slope = double.Hypot(east, north);
        return slope > 0 ? View.Metres(colours.StepDb / slope) : double.PositiveInfinity;
    }

    private static double LengthOf(SKPoint[] line) =>
        Enumerable.Range(1, line.Length - 1).Sum(i => SKPoint.Distance(line[i - 1], line[i]));

    // The line has a gap for each number. Numbers keep clear of each other, so their gaps are one path.
    private void Stroke(SKCanvas canvas, IReadOnlyList<SKPoint[]> lines, List<ContourText> texts, ReadOnlySpan<SKPaint> paints)
    {
        canvas.Save();
        if (texts.Count > 0)
        {
            using var holes = new SKPath();
            foreach (ContourText text in texts)
            {
                using var hole = new SKPath();
                hole.AddRect(TextRect(text));
                hole.Transform(SKMatrix.CreateRotationDegrees((float)text.TurnDegrees, (float)text.X, (float)text.Y));
                holes.AddPath(hole);
            }

            Clips.Without(canvas, holes);
        }

        using var path = new SKPath();
        foreach (SKPoint[] line in lines)
        {
            path.AddPoly(line, close: false);
        }

        foreach (SKPaint paint in paints)
        {
            canvas.DrawPath(path, paint);
        }

        canvas.Restore();
    }

    private SKRect TextRect(ContourText text)
    {
        using var figures = new Lettering(View.Points(FigurePoints + 0.5), isBold: true);
        float half = (float)((figures.WidthOf(text.Text) / 2) + View.Points(1.5));
        float rise = (float)((figures.CapHeight / 2) + View.Points(1));
        return new((float)text.X - half, (float)text.Y - rise, (float)text.X + half, (float)text.Y + rise);
    }

    private void Write(SKCanvas canvas, List<ContourText> texts, Lettering figures)
    {
        SKColor rim = Palette.Paper.WithAlpha(210);
        foreach (ContourText text in texts)
        {
            canvas.Save();
            canvas.RotateDegrees((float)text.TurnDegrees, (float)text.X, (float)text.Y);
            figures.WriteMiddleRimmed(
                canvas, text.Text, text.X, text.Y, Palette.Ink, rim, View.Points(1.4), SKTextAlign.Center);
            canvas.Restore();
        }
    }
}

/// <summary>The style of lines at required margins: bold if most seats require it, bold and dashed if only some do.</summary>
internal static class RequiredLine
{
    /// <summary>The light edge below it.</summary>
    public static SKPaint Casing(double pixelsPerPoint, bool isDashed) =>
        Pen.Line(Palette.Paper.WithAlpha(isDashed ? (byte)170 : (byte)255), (isDashed ? 3.4 : 4.4) * pixelsPerPoint);

    /// <summary>The line.</summary>
    public static SKPaint Ink(double pixelsPerPoint, bool isDashed) => isDashed
        ? Pen.Dashed(Palette.Ink, 1.9 * pixelsPerPoint, 5 * pixelsPerPoint, 3 * pixelsPerPoint)
        : Pen.Line(Palette.Ink, 2.4 * pixelsPerPoint);
}
