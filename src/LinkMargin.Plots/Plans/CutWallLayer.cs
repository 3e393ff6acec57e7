using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Plans;

/// <summary>Walls filled by material; low or hanging ones with a dashed rim.</summary>
internal sealed class CutWallLayer(PlanView view, Level level, MaterialPatterns patterns) : PlanLayer(view)
{
    protected override void Draw(SKCanvas canvas)
    {
        double least = WallLayer.LeastPixels / View.PixelsPerMetre;
        ILookup<bool, WallShape> shapes = WallShape.Of(level, least).ToLookup(s => s.IsFull);
        using SKPaint rim = Pen.Line(Palette.Ink, View.Points(1.5));
        using SKPaint dashed = Pen.Dashed(Palette.Ink, View.Points(1.5), View.Points(3), View.Points(2));

        // Low walls first: a full wall is never cut by one. All rims before all fills: no line is left across a joint.
        Fill(canvas, [.. shapes[false]], dashed);
        Fill(canvas, [.. shapes[true]], rim);
    }

    private void Fill(SKCanvas canvas, IReadOnlyList<WallShape> shapes, SKPaint rim)
    {
        foreach (WallShape shape in shapes)
        {
            using SKPath outline = View.Outline(shape.Corners);
            canvas.DrawPath(outline, rim);
        }

        // A wall ends in the middle of the one it meets: the thicker is filled last and covers the end.
        foreach (WallShape shape in shapes.OrderBy(s => WallShape.ThicknessOf(s.Wall.Material)))
        {
            using SKPath outline = View.Outline(shape.Corners);
            patterns.Of(shape.Wall.Material).Fill(canvas, outline, View.PixelsPerPoint);
        }
    }
}
