using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Spots;

/// <summary>A margin with its spread: full where it can be counted on, an outline where not.</summary>
internal static class SpotSign
{
    /// <summary>Draws one from the margin to count on to the high one, with a dot at the median.</summary>
    internal static void Draw(
        SKCanvas canvas, SKColor colour, double counted, double median, double high, double middle, double barPoints, double pixelsPerPoint, bool passes)
    {
        double half = barPoints / 2 * pixelsPerPoint;
        var bar = new SKRect((float)counted, (float)(middle - half), (float)Math.Max(high, counted + 1), (float)(middle + half));
        using SKPaint fill = Pen.Fill(passes ? colour : Palette.Paper), rim = Pen.Line(colour, 1.2 * pixelsPerPoint);
        canvas.DrawRect(bar, fill);
        canvas.DrawRect(bar, rim);
        double radius = 3.6 * pixelsPerPoint;
        using SKPaint dot = Pen.Fill(passes ? Palette.Paper : colour);
        canvas.DrawCircle((float)median, (float)middle, (float)radius, dot);
        canvas.DrawCircle((float)median, (float)middle, (float)radius, rim);
    }
}
