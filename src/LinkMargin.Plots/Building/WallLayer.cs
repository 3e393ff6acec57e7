using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Building;

/// <summary>Walls as on an architect's plan: cut full-height walls solid, low or hanging ones as outlines.</summary>
internal sealed class WallLayer(PlanView view, Level level) : PlanLayer(view)
{
    /// <summary>Walls are never drawn thinner than this, pixels.</summary>
    public const double LeastPixels = 2;

    /// <summary>The colour of walls.</summary>
    public SKColor Ink { get; init; } = Palette.Ink;

    protected override void Draw(SKCanvas canvas)
    {
        IReadOnlyList<WallShape> shapes = WallShape.Of(level, LeastPixels / View.PixelsPerMetre);
        using SKPaint casing = Pen.Line(Palette.Paper.WithAlpha(200), View.Points(2));
        using SKPaint rim = Pen.Line(Ink, View.Points(1.2));
        using SKPaint low = Pen.Fill(Palette.Paper.WithAlpha(170));
        using SKPaint solid = Pen.Fill(Ink);

        // One path for each kind, so that no seam shows where two walls meet.
        using SKPath full = Together(shapes.Where(s => s.IsFull)), partial = Together(shapes.Where(s => !s.IsFull));
        canvas.DrawPath(full, casing);
        canvas.DrawPath(partial, rim);
        canvas.DrawPath(partial, low);
        canvas.DrawPath(full, solid);
    }

    private SKPath Together(IEnumerable<WallShape> shapes)
    {
        var path = new SKPath { FillType = SKPathFillType.Winding };
        foreach (WallShape shape in shapes)
        {
            path.AddPoly([.. shape.Corners.Select(View.Pixel)], close: true);
        }

        return path;
    }
}

/// <summary>Walls filled by material; low or hanging ones with a dashed rim.</summary>
internal sealed class CutWallLayer(PlanView view, Level level, MaterialPatterns patterns) : PlanLayer(view)
{
    protected override void Draw(SKCanvas canvas)
    {
        double least = WallLayer.LeastPixels / View.PixelsPerMetre;
        ILookup<bool, WallShape> shapes = WallShape.Of(level, least).ToLookup(s => s.IsFull);
        using SKPaint rim = Pen.Line(Palette.Ink, View.Points(1.5));
        using SKPaint dashed = Pen.Dashed(Palette.Ink, View.Points(1.5), View.Points(3), View.Points(2));

        // Low walls first, so that none cuts a full wall. All rims before all fills, so that no line crosses a joint.
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

        // A wall ends in the middle of the one it meets: the thicker is filled last and covers that end.
        foreach (WallShape shape in shapes.OrderBy(s => WallShape.ThicknessOf(s.Wall.Material)))
        {
            using SKPath outline = View.Outline(shape.Corners);
            patterns.Of(shape.Wall.Material).Fill(canvas, outline, View.PixelsPerPoint);
        }
    }
}
