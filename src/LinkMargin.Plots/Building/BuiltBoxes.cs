using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;

namespace LinkMargin.Plots.Building;

/// <summary>
/// Ground taken by walls, their openings, open doors and fixtures, as axis-aligned boxes that text should avoid.
/// </summary>
internal static class BuiltBoxes
{
    // The box around a long slanted wall would be far larger than the wall.
    private const double LeastSlantMetres = 1;
    private const double PiecePoints = 6;
    private const int MostPieces = 500;

    public static IEnumerable<LabelBox> Of(PlanView view, Level level, IEnumerable<Fixture> fixtures)
    {
        return Of(view, level).Concat(fixtures.Select(f => BoxOf(view, f.Corners())));
    }

    /// <summary>The bounding boxes of outlines, pixels.</summary>
    public static IEnumerable<LabelBox> Of(PlanView view, IEnumerable<Polygon> outlines) =>
        outlines.Select(o => BoxOf(view, o.Corners));

    /// <summary>The boxes of walls alone, pixels: a slanted wall is divided into pieces whose boxes fit closely.</summary>
    public static IEnumerable<LabelBox> OfWalls(PlanView view, Level level)
    {
        double piece = view.Points(PiecePoints) / view.PixelsPerMetre;
        foreach (Wall wall in level.Walls)
        {
            double half = WallShape.ThicknessOf(wall.Material) / 2, length = wall.LengthMetres;
            Point2 run = wall.End - wall.Start;
            bool isUpright = Math.Min(Math.Abs(run.X), Math.Abs(run.Y)) * view.PixelsPerMetre < 1;
            int pieces = isUpright ? 1 : (int)Math.Clamp(Math.Ceiling(length / piece), 1, MostPieces);
            for (int i = 0; i < pieces; i++)
            {
                yield return BoxOf(view, WallShape.Along(wall, length * i / pieces, length * (i + 1) / pieces, -half, half));
            }
        }
    }

    private static IEnumerable<LabelBox> Of(PlanView view, Level level)
    {
        IEnumerable<IReadOnlyList<Point2>> outlines = level.Walls.Select(OutlineOf)
            .Concat(level.Walls.SelectMany(w => w.Openings.Where(IsStandingOpen).Select(o => LeafOf(level, w, o))));
        foreach (IReadOnlyList<Point2> corners in outlines)
        {
            double width = corners.Max(c => c.X) - corners.Min(c => c.X), height = corners.Max(c => c.Y) - corners.Min(c => c.Y);
            if (Math.Min(width, height) < LeastSlantMetres)
            {
                yield return BoxOf(view, corners);
            }
        }
    }

    private static LabelBox BoxOf(PlanView view, IReadOnlyList<Point2> corners) => new(
        view.PixelX(corners.Min(c => c.X)),
        view.PixelY(corners.Max(c => c.Y)),
        view.PixelX(corners.Max(c => c.X)),
        view.PixelY(corners.Min(c => c.Y)));

    private static IReadOnlyList<Point2> OutlineOf(Wall wall)
    {
        double half = WallShape.ThicknessOf(wall.Material) / 2;
        return WallShape.Along(wall, 0, wall.LengthMetres, -half, half);
    }

    private static bool IsStandingOpen(Opening opening) => opening.Kind == OpeningKind.Door && opening.IsOpen;

    private static IReadOnlyList<Point2> LeafOf(Level level, Wall wall, Opening door)
    {
        DoorSwing swing = DoorSwing.Of(level, wall, door);
        return [swing.Hinge, swing.Tip];
    }
}
