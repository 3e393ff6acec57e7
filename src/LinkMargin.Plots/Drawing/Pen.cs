using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>Makes the paints for drawing.</summary>
internal static class Pen
{
    public static SKPaint Line(SKColor colour, double widthPixels) => new()
    {
        Style = SKPaintStyle.Stroke,
        Color = colour,
        StrokeWidth = (float)widthPixels,
        StrokeJoin = SKStrokeJoin.Round,
        IsAntialias = true,
    };

    public static SKPaint Dashed(SKColor colour, double widthPixels, double dashPixels, double gapPixels)
    {
        SKPaint paint = Line(colour, widthPixels);
        paint.PathEffect = SKPathEffect.CreateDash([(float)dashPixels, (float)gapPixels], 0);
        return paint;
    }

    public static SKPaint Fill(SKColor colour) => new()
    {
        Style = SKPaintStyle.Fill,
        Color = colour,
        IsAntialias = true,
    };
}
