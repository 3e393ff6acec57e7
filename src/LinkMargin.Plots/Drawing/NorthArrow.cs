using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>The north arrow: up on every plan, since y points north.</summary>
internal static class NorthArrow
{
    /// <summary>The arrow as a key entry.</summary>
    public static KeyEntry For(double pixelsPerPoint) => new(8, "north", (canvas, box) => Draw(canvas, box, pixelsPerPoint));

    private static void Draw(SKCanvas canvas, LabelBox box, double pixelsPerPoint)
    {
        float x = (float)box.CentreX, half = (float)(3.6 * pixelsPerPoint);
        float top = (float)(box.CentreY - (6.5 * pixelsPerPoint)), bottom = (float)(box.CentreY + (6 * pixelsPerPoint));
        float notch = (float)(box.CentreY + (3 * pixelsPerPoint));
        using SKPath left = new(), whole = new();
        left.AddPoly([new(x, top), new(x - half, bottom), new(x, notch)], close: true);
        whole.AddPoly([new(x, top), new(x - half, bottom), new(x, notch), new(x + half, bottom)], close: true);
        using SKPaint ink = Pen.Fill(Palette.Ink), rim = Pen.Line(Palette.Ink, 0.7 * pixelsPerPoint);
        canvas.DrawPath(left, ink);
        canvas.DrawPath(whole, rim);
    }
}
