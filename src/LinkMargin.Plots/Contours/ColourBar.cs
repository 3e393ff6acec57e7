using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Contours;

/// <summary>The colour scale beside a map: margins upwards, hatched up to the bold line of the required margin.</summary>
internal sealed class ColourBar(MarginColours colours, double requiredDb, double pixelsPerPoint)
{
    /// <summary>Width including its numbers, points.</summary>
    public const double WidthPoints = 74;

    private const double BarPoints = 15;
    private const double HeadPoints = 26;
    private const double SizePoints = 9;

    /// <summary>The quantity of the scale.</summary>
    public string Heading { get; init; } = "margin";

    /// <summary>The meaning of the bold line.</summary>
    public string Line { get; init; } = "required";

    /// <summary>Margins that only some seats require, dB.</summary>
    public IReadOnlyList<double> AlsoRequiredDb { get; init; } = [];

    /// <summary>Whether everything below that line is hatched.</summary>
    public bool IsHatched { get; init; } = true;

    public void Draw(SKCanvas canvas, LabelBox box)
    {
        using Lettering plain = new(SizePoints * pixelsPerPoint, isBold: false);
        using Lettering bold = new(SizePoints * pixelsPerPoint, isBold: true);
        bold.Write(canvas, Heading, box.Left, box.Top + bold.CapHeight, Palette.Ink);
        plain.Write(canvas, "dB", box.Left, box.Top + bold.CapHeight + plain.LineHeight, Palette.Ink);
        var bar = new LabelBox(
            box.Left, box.Top + (HeadPoints * pixelsPerPoint), box.Left + (BarPoints * pixelsPerPoint), box.Bottom);
        DrawTones(canvas, bar);
        if (IsHatched)
        {
            DrawHatch(canvas, bar);
        }
        using SKPaint rim = Pen.Line(Palette.SoftInk, 0.6 * pixelsPerPoint);
        canvas.DrawRect(Rect(bar), rim);
        DrawFigures(canvas, bar, plain);
        foreach (double also in AlsoRequiredDb.Where(m => m > colours.Range.LeastDb && m < colours.Range.GreatestDb))
        {
            DrawRequired(canvas, bar, bold, plain, also, "some seats", isDashed: true);
        }

        DrawRequired(canvas, bar, bold, plain, requiredDb, Line, isDashed: false);
    }

    private double YOf(LabelBox bar, double margin)
    {
        ColourRange range = colours.Range;
        double share = Math.Clamp((margin - range.LeastDb) / (range.GreatestDb - range.LeastDb), 0, 1);
        return bar.Bottom - (share * bar.Height);
    }

    private IEnumerable<double> Ends() => colours.Lines().Prepend(colours.Range.LeastDb).Append(colours.Range.GreatestDb);

    private void DrawTones(SKCanvas canvas, LabelBox bar)
    {
        double[] ends = [.. Ends()];
        for (int i = 1; i < ends.Length; i++)
        {
            using SKPaint tone = Pen.Fill(colours.Of((ends[i - 1] + ends[i]) / 2));
            tone.IsAntialias = false;
            canvas.DrawRect(
                new SKRect((float)bar.Left, (float)YOf(bar, ends[i]), (float)bar.Right, (float)YOf(bar, ends[i - 1])), tone);
        }
    }

    private void DrawHatch(SKCanvas canvas, LabelBox bar)
    {
        canvas.Save();
        canvas.ClipRect(new SKRect((float)bar.Left, (float)YOf(bar, requiredDb), (float)bar.Right, (float)bar.Bottom));
        using var strokes = new SKPath();
        double shift = FieldLayer.HatchSpacingPoints * Math.Sqrt(2) * pixelsPerPoint;
        for (double y = bar.Top; y < bar.Bottom + bar.Width; y += shift)
        {
            strokes.MoveTo((float)bar.Left, (float)y);
            strokes.LineTo((float)bar.Right, (float)(y - bar.Width));
        }

        FieldLayer.DrawHatch(canvas, strokes, pixelsPerPoint);
        canvas.Restore();
    }

    private void DrawFigures(SKCanvas canvas, LabelBox bar, Lettering lettering)
    {
        using SKPaint tick = Pen.Line(Palette.SoftInk, 0.6 * pixelsPerPoint);
        double lastY = double.PositiveInfinity, required = YOf(bar, requiredDb);
        foreach (double margin in Ends())
        {
            double y = YOf(bar, margin);
            canvas.DrawLine((float)bar.Right, (float)y, (float)(bar.Right + (2.5 * pixelsPerPoint)), (float)y, tick);

            // A number is left out if it would touch another or that of a required margin.
            if (lastY - y < lettering.LineHeight || Math.Abs(required - y) < lettering.LineHeight
                || AlsoRequiredDb.Any(also => Math.Abs(YOf(bar, also) - y) < lettering.LineHeight))
            {
                continue;
            }

            bool isLeast = margin == colours.Range.LeastDb, isGreatest = margin == colours.Range.GreatestDb;
            string text = (isLeast ? "≤ " : isGreatest ? "≥ " : "") + MarginText.Bare(margin);
            lettering.WriteMiddle(canvas, text, bar.Right + (5 * pixelsPerPoint), y, Palette.Ink);
            lastY = y;
        }
    }

    private void DrawRequired(
        SKCanvas canvas, LabelBox bar, Lettering bold, Lettering plain, double margin, string words, bool isDashed)
    {
        float y = (float)YOf(bar, margin);
        using SKPaint casing = RequiredLine.Casing(pixelsPerPoint, isDashed), heavy = RequiredLine.Ink(pixelsPerPoint, isDashed);
        canvas.DrawLine((float)bar.Left, y, (float)bar.Right, y, casing);
        canvas.DrawLine((float)bar.Left, y, (float)(bar.Right + (3 * pixelsPerPoint)), y, heavy);
        string figure = MarginText.Bare(margin);
        double x = bar.Right + (5 * pixelsPerPoint);
        if (isDashed && Math.Abs(y - YOf(bar, requiredDb)) < plain.LineHeight)
        {
            return;
        }

        bold.WriteMiddle(canvas, figure, x, y, Palette.Ink);
        plain.WriteMiddle(canvas, words, x + bold.WidthOf(figure) + (3 * pixelsPerPoint), y, Palette.Ink);
    }

    private static SKRect Rect(LabelBox box) => new((float)box.Left, (float)box.Top, (float)box.Right, (float)box.Bottom);
}
