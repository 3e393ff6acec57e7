using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Paths;

/// <summary>Dots over the room whose diffuse field reaches the seat.</summary>
internal sealed class DiffuseLayer(PlanView view, Room room) : PlanLayer(view)
{
    protected override void Draw(SKCanvas canvas)
    {
        using SKPath outline = View.Outline(room.Outline.Corners);
        canvas.Save();
        canvas.ClipPath(outline, antialias: true);
        PathPen.Stipple(canvas, outline.Bounds, View.PixelsPerPoint);
        canvas.Restore();
    }
}
