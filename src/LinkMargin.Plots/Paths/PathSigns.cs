using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Paths;

/// <summary>
/// Small signs on a path: a tick for each obstacle, a triangle where a floor or ceiling reflects it, a ring where it
/// continues on another level.
/// </summary>
internal static class PathSigns
{
    private const double TickPoints = 3.2;
    private const double RingPoints = 2.6;
    private const double TrianglePoints = 3.6;

    /// <summary>Draws the signs of one path on a level.</summary>
    public static void Draw(SKCanvas canvas, PlanView view, DrawnPath path, int levelIndex)
    {
        double width = PathPen.WidthPoints(path.Entry.Share);
        foreach (Crossing crossing in path.Entry.Path.Path.Crossings
            .Where(c => c.Kind is not (ObstacleKind.FloorLayer or ObstacleKind.Joists)))
        {
            TrackPoint at = path.Track.At(crossing.DistanceMetres);
            if (at.LevelIndex == levelIndex)
            {
                DrawTick(canvas, view.Pixel(at.Plan), at.Direction, (width / 2) + TickPoints, view.PixelsPerPoint);
            }
        }

        foreach (PathTurn turn in path.Entry.Path.Turns.Where(t => t.Kind is TurnKind.Floor or TurnKind.Ceiling))
        {
            TrackPoint at = path.Track.At(turn.DistanceMetres);
            if (at.LevelIndex == levelIndex)
            {
                DrawTriangle(canvas, view.Pixel(at.Plan), turn.Kind == TurnKind.Ceiling, view.PixelsPerPoint);
            }
        }

        foreach (TrackPoint end in LevelEnds(path.Track, levelIndex))
        {
            DrawRing(canvas, view.Pixel(end.Plan), view.PixelsPerPoint);
        }
    }

    /// <summary>Where a path enters or leaves a level.</summary>
    public static IEnumerable<TrackPoint> LevelEnds(PathTrack track, int levelIndex)
    {
        for (int i = 0; i + 1 < track.Parts.Count; i++)
        {
            foreach (TrackPart part in new[] { track.Parts[i], track.Parts[i + 1] }.Where(part => part.LevelIndex == levelIndex))
            {
                yield return part == track.Parts[i] ? part.Points[^1] : part.Points[0];
            }
        }
    }

    public static void DrawTick(SKCanvas canvas, SKPoint at, Point2 direction, double reachPoints, double pixelsPerPoint)
    {
        float reach = (float)(reachPoints * pixelsPerPoint), x = (float)direction.X, y = (float)-direction.Y;
        var from = new SKPoint(at.X - (reach * y), at.Y + (reach * x));
        var to = new SKPoint(at.X + (reach * y), at.Y - (reach * x));
        using SKPaint casing = Pen.Line(Palette.Paper, 2.2 * pixelsPerPoint);
        using SKPaint ink = Pen.Line(Palette.Ink, 1.1 * pixelsPerPoint);
        canvas.DrawLine(from, to, casing);
        canvas.DrawLine(from, to, ink);
    }

    public static void DrawRing(SKCanvas canvas, SKPoint at, double pixelsPerPoint)
    {
        using SKPaint ground = Pen.Fill(Palette.Paper);
        using SKPaint rim = Pen.Line(Palette.Ink, 1.1 * pixelsPerPoint);
        canvas.DrawCircle(at, (float)((RingPoints + 1) * pixelsPerPoint), ground);
        canvas.DrawCircle(at, (float)(RingPoints * pixelsPerPoint), rim);
    }

    public static void DrawTriangle(SKCanvas canvas, SKPoint at, bool isUpwards, double pixelsPerPoint)
    {
        float reach = (float)(TrianglePoints * pixelsPerPoint), up = isUpwards ? -reach : reach;
        using var triangle = new SKPath();
        triangle.AddPoly([new(at.X, at.Y + up), new(at.X - reach, at.Y - (up * 0.6f)), new(at.X + reach, at.Y - (up * 0.6f))], close: true);
        using SKPaint casing = Pen.Line(Palette.Paper, 2.4 * pixelsPerPoint);
        using SKPaint ground = Pen.Fill(Palette.Paper);
        using SKPaint rim = Pen.Line(Palette.Ink, 1.0 * pixelsPerPoint);
        canvas.DrawPath(triangle, casing);
        canvas.DrawPath(triangle, ground);
        canvas.DrawPath(triangle, rim);
    }
}
