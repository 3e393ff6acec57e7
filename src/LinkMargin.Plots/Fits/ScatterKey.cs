using System.Globalization;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Fits;

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
