using System.Globalization;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Charts;

/// <summary>One square: predicted along, read upwards; a law that is right has its readings on the diagonal.</summary>
internal sealed class ScatterPanel(LabelBox frame, DecibelAxis range, double pixelsPerPoint)
{
    /// <summary>The ground beside the diagonal.</summary>
    public static readonly SKColor BandColour = new(0xDF, 0xE6, 0xEA);

    private const double TitlePoints = 11;
    private const double LetterPoints = 9;

    /// <summary>Whether the left axis has figures and a name.</summary>
    public bool HasLeftFigures { get; init; }

    /// <summary>Room above the frame, points.</summary>
    public double HeadPoints { get; init; }

    /// <summary>Half the width of the ground beside the diagonal, dB.</summary>
    public double NoiseDb { get; init; }

    /// <summary>Draws it.</summary>
    public void Draw(SKCanvas canvas, FitPanel panel)
    {
        DrawGround(canvas);
        DrawAxes(canvas);
        foreach (FitPoint point in panel.Points.OrderBy(p => p.LooksBad))
        {
            ScatterMark.Draw(canvas, X(point.PredictedDbm), Y(point.ReadDbm), pixelsPerPoint, point.IsHeard, point.LooksBad);
        }

        DrawLabels(canvas, panel.Points);
        using Lettering bold = new(TitlePoints * pixelsPerPoint, isBold: true);
        using Lettering plain = new(LetterPoints * pixelsPerPoint, isBold: false);
        double top = frame.Top - (HeadPoints * pixelsPerPoint);
        bold.WriteMiddle(canvas, bold.Fitted(panel.Title, frame.Width), frame.Left, top + (8 * pixelsPerPoint), Palette.Ink);
        plain.WriteMiddle(canvas, plain.Fitted(panel.Figures, frame.Width), frame.Left, top + (22 * pixelsPerPoint), Palette.SoftInk);
    }

    private double X(double levelDbm) => frame.Left + (range.Share(levelDbm) * frame.Width);

    private double Y(double levelDbm) => frame.Bottom - (range.Share(levelDbm) * frame.Height);

    private void DrawGround(SKCanvas canvas)
    {
        var box = new SKRect((float)frame.Left, (float)frame.Top, (float)frame.Right, (float)frame.Bottom);
        using SKPaint ground = Pen.Fill(Palette.Ground), band = Pen.Fill(BandColour), diagonal = Pen.Line(Palette.Ink, pixelsPerPoint);
        canvas.DrawRect(box, ground);
        canvas.Save();
        canvas.ClipRect(box);
        double low = range.Least - (2 * NoiseDb), high = range.Greatest + (2 * NoiseDb);
        using var path = new SKPath();
        path.MoveTo((float)X(low), (float)Y(low - NoiseDb));
        path.LineTo((float)X(high), (float)Y(high - NoiseDb));
        path.LineTo((float)X(high), (float)Y(high + NoiseDb));
        path.LineTo((float)X(low), (float)Y(low + NoiseDb));
        path.Close();
        canvas.DrawPath(path, band);
        canvas.DrawLine((float)X(low), (float)Y(low), (float)X(high), (float)Y(high), diagonal);
        canvas.Restore();
    }

    private void DrawAxes(SKCanvas canvas)
    {
        using SKPaint line = Pen.Line(Palette.SoftInk, 0.6 * pixelsPerPoint);
        using Lettering plain = new(LetterPoints * pixelsPerPoint, isBold: false);
        double tick = 3.5 * pixelsPerPoint, gap = 5 * pixelsPerPoint;
        foreach (double level in range.Ticks)
        {
            string text = level.ToString("0", CultureInfo.InvariantCulture).Replace('-', '−');
            canvas.DrawLine((float)X(level), (float)frame.Bottom, (float)X(level), (float)(frame.Bottom + tick), line);
            plain.WriteMiddle(canvas, text, X(level), frame.Bottom + tick + (6 * pixelsPerPoint), Palette.SoftInk, SKTextAlign.Center);
            if (HasLeftFigures)
            {
                canvas.DrawLine((float)(frame.Left - tick), (float)Y(level), (float)frame.Left, (float)Y(level), line);
                plain.WriteMiddle(canvas, text, frame.Left - tick - (gap / 2), Y(level), Palette.SoftInk, SKTextAlign.Right);
            }
        }

        canvas.DrawRect((float)frame.Left, (float)frame.Top, (float)frame.Width, (float)frame.Height, line);
        plain.WriteMiddle(canvas, "predicted, dBm", frame.CentreX, frame.Bottom + (24 * pixelsPerPoint), Palette.Ink, SKTextAlign.Center);
        if (HasLeftFigures)
        {
            canvas.Save();
            canvas.RotateDegrees(-90, (float)(frame.Left - (34 * pixelsPerPoint)), (float)frame.CentreY);
            plain.WriteMiddle(canvas, "read, dBm", frame.Left - (34 * pixelsPerPoint), frame.CentreY, Palette.Ink, SKTextAlign.Center);
            canvas.Restore();
        }
    }

    // Beside, over or under its mark, where it fits the frame and covers the fewest others.
    private void DrawLabels(SKCanvas canvas, IReadOnlyList<FitPoint> points)
    {
        using Lettering plain = new(LetterPoints * pixelsPerPoint, isBold: false);
        double gap = 7 * pixelsPerPoint, half = 6 * pixelsPerPoint;
        foreach (FitPoint point in points.Where(p => p.Label is not null))
        {
            double x = X(point.PredictedDbm), y = Y(point.ReadDbm);
            string text = plain.Fitted(point.Label!, frame.Width - (2 * gap));
            double width = plain.WidthOf(text);
            LabelBox best = new (double Left, double Middle)[]
                {
                    (x + gap, y), (x - gap - width, y), (x - width, y - (2 * half)), (x, y - (2 * half)),
                    (x - width, y + (2 * half)), (x, y + (2 * half)),
                }
                .Select(at => (Left: Math.Clamp(at.Left, frame.Left + (gap / 2), frame.Right - width - (gap / 2)), at.Middle))
                .Select(at => new LabelBox(at.Left, at.Middle - half, at.Left + width, at.Middle + half))
                .MinBy(box => points.Count(other => Covers(box, other)) + (box.Top < frame.Top || box.Bottom > frame.Bottom ? points.Count : 0))!;
            plain.WriteMiddleRimmed(
                canvas, text, best.Left, best.CentreY, Palette.Ink, Palette.Ground, 1.5 * pixelsPerPoint, SKTextAlign.Left);
        }
    }

    private bool Covers(LabelBox box, FitPoint point)
    {
        double reach = 3.5 * pixelsPerPoint, x = X(point.PredictedDbm), y = Y(point.ReadDbm);
        return x > box.Left - reach && x < box.Right + reach && y > box.Top - reach && y < box.Bottom + reach;
    }
}

/// <summary>How a reading is drawn: told by its shape, not by a colour.</summary>
internal static class ScatterMark
{
    private const double RadiusPoints = 3.2;

    /// <summary>Draws one: a disc; a ring with a stroke through it where it looks wrong; a wedge that points down where nothing was heard.</summary>
    public static void Draw(SKCanvas canvas, double x, double y, double pixelsPerPoint, bool isHeard, bool looksBad)
    {
        double r = RadiusPoints * pixelsPerPoint;
        using SKPaint rim = Pen.Line(Palette.Paper, 1.2 * pixelsPerPoint);
        if (!isHeard)
        {
            using var path = new SKPath();
            path.MoveTo((float)(x - r), (float)(y - r));
            path.LineTo((float)(x + r), (float)(y - r));
            path.LineTo((float)x, (float)(y + (1.1 * r)));
            path.Close();
            using SKPaint hollow = Pen.Fill(Palette.Paper), edge = Pen.Line(Palette.Ink, 1.1 * pixelsPerPoint);
            canvas.DrawPath(path, hollow);
            canvas.DrawPath(path, edge);
            return;
        }

        if (looksBad)
        {
            using SKPaint hollow = Pen.Fill(Palette.Paper), edge = Pen.Line(Palette.Spot, 1.4 * pixelsPerPoint);
            canvas.DrawCircle((float)x, (float)y, (float)(1.15 * r), hollow);
            canvas.DrawCircle((float)x, (float)y, (float)(1.15 * r), edge);
            canvas.DrawLine((float)(x - (0.8 * r)), (float)(y + (0.8 * r)), (float)(x + (0.8 * r)), (float)(y - (0.8 * r)), edge);
            return;
        }

        using SKPaint ink = Pen.Fill(Palette.Ink);
        canvas.DrawCircle((float)x, (float)y, (float)r, ink);
        canvas.DrawCircle((float)x, (float)y, (float)r, rim);
    }
}

/// <summary>What the marks mean, in one line; only those that are there.</summary>
internal static class ScatterKey
{
    private const double LetterPoints = 9.5;

    public static void Draw(SKCanvas canvas, double left, double middle, double pixelsPerPoint, double noiseDb, IReadOnlyList<FitPoint> points)
    {
        using var lettering = new Lettering(LetterPoints * pixelsPerPoint, isBold: false);
        double x = left + (6 * pixelsPerPoint);
        Mark(points.Any(p => p.IsHeard && !p.LooksBad), isHeard: true, looksBad: false, "reading");
        Mark(points.Any(p => p.IsHeard && p.LooksBad), isHeard: true, looksBad: true, "reading that looks wrong");
        Mark(points.Any(p => !p.IsHeard), isHeard: false, looksBad: false, "nothing heard: the level lies below");
        using SKPaint band = Pen.Fill(ScatterPanel.BandColour), line = Pen.Line(Palette.Ink, pixelsPerPoint);
        double half = 5 * pixelsPerPoint, wide = 18 * pixelsPerPoint;
        canvas.DrawRect((float)x, (float)(middle - half), (float)wide, (float)(2 * half), band);
        canvas.DrawLine((float)x, (float)middle, (float)(x + wide), (float)middle, line);
        lettering.WriteMiddle(
            canvas,
            string.Create(CultureInfo.InvariantCulture, $"read as predicted, and ±{noiseDb:0.0} dB, as far as two good readings of three lie from it"),
            x + wide + (5 * pixelsPerPoint),
            middle,
            Palette.Ink);

        void Mark(bool isThere, bool isHeard, bool looksBad, string text)
        {
            if (!isThere)
            {
                return;
            }

            ScatterMark.Draw(canvas, x, middle, pixelsPerPoint, isHeard, looksBad);
            x += 8 * pixelsPerPoint;
            lettering.WriteMiddle(canvas, text, x, middle, Palette.Ink);
            x += lettering.WidthOf(text) + (20 * pixelsPerPoint);
        }
    }
}

/// <summary>The levels that both axes of a fit run over.</summary>
internal static class LevelAxis
{
    private const double LeastSpanDb = 30;
    private const double EdgeDb = 2.5;
    private const int MostSteps = 8;

    /// <summary>The axis that holds all points, dBm.</summary>
    public static DecibelAxis Of(IEnumerable<FitPoint> points)
    {
        double[] all = [.. points.SelectMany(point => new[] { point.ReadDbm, point.PredictedDbm }).Where(double.IsFinite)];
        var axis = DecibelAxis.Over(all.Length == 0 ? -90 : all.Min(), all.Length == 0 ? -40 : all.Max(), EdgeDb, MostSteps);
        return axis with { Least = Math.Min(axis.Least, axis.Greatest - LeastSpanDb) };
    }
}
