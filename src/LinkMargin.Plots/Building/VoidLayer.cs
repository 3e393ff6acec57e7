using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Building;

/// <summary>Holes in a floor: a dashed outline with a dashed cross.</summary>
internal sealed class VoidLayer(PlanView view, IReadOnlyList<Polygon> voids) : PlanLayer(view)
{
    /// <summary>Draws one hole.</summary>
    /// <param name="canvas">Where to draw.</param>
    /// <param name="view">The view.</param>
    /// <param name="hole">The hole.</param>
    /// <param name="dashPoints">Length of a dash, points.</param>
    public static void DrawOne(SKCanvas canvas, PlanView view, Polygon hole, double dashPoints = 4)
    {
        using SKPaint line = Pen.Dashed(
            Palette.SoftInk, view.Points(0.9), view.Points(dashPoints), view.Points(0.6 * dashPoints));
        using SKPath outline = view.Outline(hole.Corners);
        canvas.DrawPath(outline, line);
        canvas.Save();
        canvas.ClipPath(outline, antialias: true);
        Point2 least = hole.Least, greatest = hole.Greatest;
        canvas.DrawLine(view.Pixel(least), view.Pixel(greatest), line);
        canvas.DrawLine(view.Pixel(new(least.X, greatest.Y)), view.Pixel(new(greatest.X, least.Y)), line);
        canvas.Restore();
    }

    protected override void Draw(SKCanvas canvas)
    {
        // Stairs often rise through several floors: a hole directly below another is drawn once.
        foreach (Polygon hole in voids.DistinctBy(v => (v.Least, v.Greatest, v.Corners.Count)))
        {
            DrawOne(canvas, View, hole);
        }
    }
}

/// <summary>Holes in a level's own floor, which the level below describes.</summary>
internal static class FloorVoids
{
    public static IReadOnlyList<Polygon> Of(House house, int levelIndex) =>
        levelIndex > 0 ? house.Levels[levelIndex - 1].Above?.Voids ?? [] : [];
}
