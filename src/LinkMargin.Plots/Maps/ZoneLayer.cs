using LinkMargin.Engine.Geometry;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Maps;

/// <summary>Where a console may stand: an outline in the spot's colour with a light edge.</summary>
internal sealed class ZoneLayer(PlanView view, IReadOnlyList<Polygon> zones) : PlanLayer(view)
{
    /// <summary>Draws one.</summary>
    public static void DrawOne(SKCanvas canvas, SKPath outline, double pixelsPerPoint)
    {
        using SKPaint casing = Pen.Line(Palette.Paper, 3 * pixelsPerPoint);
        using SKPaint line = Pen.Line(Palette.Spot, 1.2 * pixelsPerPoint);
        canvas.DrawPath(outline, casing);
        canvas.DrawPath(outline, line);
    }

    protected override void Draw(SKCanvas canvas)
    {
        foreach (Polygon zone in zones)
        {
            using SKPath outline = View.Outline(zone.Corners);
            DrawOne(canvas, outline, View.PixelsPerPoint);
        }
    }
}
