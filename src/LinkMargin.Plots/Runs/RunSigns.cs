using LinkMargin.Engine.Geometry;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Runs;

/// <summary>The style of cable runs, for plans and sections.</summary>
internal static class RunSigns
{
    private const double WidthPoints = 2;
    private const double CasingPoints = 1.2;
    private const double HolePoints = 3.2;
    private const double DrillPoints = 1.1;
    private const double SamplePoints = 14;
    private const double NumberPoints = 8.5;

    // Half the height of a number's box, and the ratio of its width to its height.
    private const double BoxPoints = 5.6;
    private const double Wider = 1.35;

    /// <summary>The ground under a line, as small boxes along it, pixels.</summary>
    public static IEnumerable<LabelBox> Ground(SKPoint from, SKPoint to, double pixelsPerPoint)
    {
        double half = WidthPoints * pixelsPerPoint;
        int steps = (int)Math.Ceiling(SKPoint.Distance(from, to) / (SamplePoints / 2 * pixelsPerPoint));
        for (int i = 0; i <= steps; i++)
        {
            float share = i / (float)Math.Max(1, steps);
            yield return LabelBox.Around(from.X + (share * (to.X - from.X)), from.Y + (share * (to.Y - from.Y)), half, half);
        }
    }

    /// <summary>The ground under a number around its centre, pixels.</summary>
    public static LabelBox NumberBox(SKPoint at, double pixelsPerPoint) =>
        LabelBox.Around(at.X, at.Y, Wider * BoxPoints * pixelsPerPoint, BoxPoints * pixelsPerPoint);

    /// <summary>The places of the numbers of runs: each in the middle of a piece; numbers on the same piece are side by side along it.</summary>
    public static IEnumerable<(int Number, Point2 At)> NumberPlaces(IEnumerable<(int Number, Point2 From, Point2 To)> stretches) =>
        from shared in stretches.GroupBy(one => (Math.Round(one.From.X + one.To.X, 1), Math.Round(one.From.Y + one.To.Y, 1)))
        let count = shared.Count()
        from one in shared.Select((one, i) => (one.Number, one.From, one.To, Share: (i + 1) / (count + 1.0)))
        select (one.Number, one.From + (one.Share * (one.To - one.From)));

    /// <summary>The line of a run: dashed where it is hidden in a floor.</summary>
    public static SKPaint Line(bool isHidden, SKColor colour, double pixelsPerPoint) => isHidden
        ? Pen.Dashed(colour, WidthPoints * pixelsPerPoint, 5 * pixelsPerPoint, 3 * pixelsPerPoint)
        : Pen.Line(colour, WidthPoints * pixelsPerPoint);

    /// <summary>The white edge of that line.</summary>
    public static SKPaint Casing(double pixelsPerPoint) => Pen.Line(Palette.Paper, (WidthPoints + (2 * CasingPoints)) * pixelsPerPoint);

    /// <summary>Draws a hole to drill.</summary>
    public static void DrawHole(SKCanvas canvas, SKPoint at, double pixelsPerPoint)
    {
        using SKPaint paper = Pen.Fill(Palette.Paper);
        using SKPaint rim = Pen.Line(Palette.Ink, 1.2 * pixelsPerPoint);
        canvas.DrawCircle(at, (float)(HolePoints * pixelsPerPoint), paper);
        canvas.DrawCircle(at, (float)(HolePoints * pixelsPerPoint), rim);
        using SKPaint middle = Pen.Fill(Palette.Ink);
        canvas.DrawCircle(at, (float)(DrillPoints * pixelsPerPoint), middle);
    }

    /// <summary>Draws where a run leaves a plan upwards or downwards.</summary>
    public static void DrawRiser(SKCanvas canvas, SKPoint at, double pixelsPerPoint)
    {
        float half = (float)(HolePoints * pixelsPerPoint);
        using SKPaint fill = Pen.Fill(Palette.Spot);
        canvas.DrawRect(SKRect.Create(at.X - half, at.Y - half, 2 * half, 2 * half), fill);
    }

    /// <summary>Draws the number of a run.</summary>
    public static void DrawNumber(SKCanvas canvas, int number, SKPoint at, SKColor colour, double pixelsPerPoint)
    {
        float half = (float)(BoxPoints * pixelsPerPoint);
        SKRect box = SKRect.Create(at.X - ((float)Wider * half), at.Y - half, 2 * (float)Wider * half, 2 * half);
        using SKPaint paper = Pen.Fill(Palette.Paper);
        using SKPaint rim = Pen.Line(colour, 0.9 * pixelsPerPoint);
        using var lettering = new Lettering(NumberPoints * pixelsPerPoint, isBold: true);
        canvas.DrawRoundRect(box, half / 2, half / 2, paper);
        canvas.DrawRoundRect(box, half / 2, half / 2, rim);
        lettering.WriteMiddle(canvas, FormattableString.Invariant($"R{number}"), at.X, at.Y, Palette.Ink, SKTextAlign.Center);
    }

    /// <summary>Key entries of the line and the hole.</summary>
    public static IEnumerable<KeyEntry> Entries(SKColor colour, double pixelsPerPoint)
    {
        yield return new(SamplePoints, "cable run, R1 as in the list of runs", (canvas, box) => DrawSample(canvas, box, false, colour, pixelsPerPoint));
        yield return new(SamplePoints, "run in a floor", (canvas, box) => DrawSample(canvas, box, true, colour, pixelsPerPoint));
        yield return new(SamplePoints, "hole to bore", (canvas, box) => DrawHole(canvas, Middle(box), pixelsPerPoint));
    }

    /// <summary>Key entry of the riser symbol.</summary>
    public static KeyEntry RiserEntry(double pixelsPerPoint) =>
        new(SamplePoints, "up or down: riser or passage", (canvas, box) => DrawRiser(canvas, Middle(box), pixelsPerPoint));

    private static void DrawSample(SKCanvas canvas, LabelBox box, bool isHidden, SKColor colour, double pixelsPerPoint)
    {
        using SKPaint pen = Line(isHidden, colour, pixelsPerPoint);
        canvas.DrawLine((float)box.Left, (float)box.CentreY, (float)box.Right, (float)box.CentreY, pen);
    }

    private static SKPoint Middle(LabelBox box) => new((float)box.CentreX, (float)box.CentreY);
}
