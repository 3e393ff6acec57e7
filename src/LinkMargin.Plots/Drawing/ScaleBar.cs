using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>A bar of a round length, drawn to the plan's scale.</summary>
internal static class ScaleBar
{
    private const double LongestPoints = 130;

    /// <summary>The bar as a key entry.</summary>
    public static KeyEntry For(double pixelsPerMetre, double pixelsPerPoint, LengthUnit unit)
    {
        double length = LengthTicks.LengthAtMost(LongestPoints * pixelsPerPoint / pixelsPerMetre, unit);
        double pixels = length * LengthTicks.MetresPer(unit) * pixelsPerMetre;
        string text = LengthTicks.Figure(length) + " " + LengthTicks.ShortNameOf(unit);
        return new(pixels / pixelsPerPoint, text, (canvas, box) => Draw(canvas, box, pixelsPerPoint));
    }

    private static void Draw(SKCanvas canvas, LabelBox box, double pixelsPerPoint)
    {
        float top = (float)(box.CentreY - (1.8 * pixelsPerPoint)), bottom = (float)(box.CentreY + (1.8 * pixelsPerPoint));
        using SKPaint ink = Pen.Fill(Palette.Ink);
        using SKPaint line = Pen.Line(Palette.Ink, 0.7 * pixelsPerPoint);
        canvas.DrawRect(new SKRect((float)box.Left, top, (float)box.CentreX, bottom), ink);
        canvas.DrawRect(new SKRect((float)box.Left, top, (float)box.Right, bottom), line);
    }
}
