using LinkMargin.Engine.Geometry;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Plans;

/// <summary>Holes in a floor: a dashed outline with a dashed cross.</summary>
internal sealed class VoidLayer(PlanView view, IReadOnlyList<Polygon> voids) : PlanLayer(view)
{
    protected override void Draw(SKCanvas canvas)
    {
        using SKPaint line = Pen.Dashed(Palette.SoftInk, View.Points(0.9), View.Points(4), View.Points(2.5));
        foreach (Polygon hole in voids)
        {
            using SKPath outline = View.Outline(hole.Corners);
            canvas.DrawPath(outline, line);
            canvas.Save();
            canvas.ClipPath(outline, antialias: true);
            Point2 least = hole.Least, greatest = hole.Greatest;
            canvas.DrawLine(View.Pixel(least), View.Pixel(greatest), line);
            canvas.DrawLine(View.Pixel(new(least.X, greatest.Y)), View.Pixel(new(greatest.X, least.Y)), line);
            canvas.Restore();
        }
    }
}
