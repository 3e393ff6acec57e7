using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Fits;

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
