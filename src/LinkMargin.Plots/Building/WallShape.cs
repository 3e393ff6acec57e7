using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Plots.Building;

/// <summary>One solid piece of a wall on the plan, between its openings.</summary>
/// <param name="Wall">The wall.</param>
/// <param name="Corners">Its outline, metres.</param>
/// <param name="IsFull">Whether the wall reaches from floor to ceiling, or nearly so.</param>
internal sealed record WallShape(Wall Wall, IReadOnlyList<Point2> Corners, bool IsFull)
{
    /// <summary>Drawn thickness of a wall whose material has none, metres.</summary>
    public const double AssumedThicknessMetres = 0.1;

    private const double LeastStretchMetres = 0.001;
    private const double FullShare = 0.9;

    public static double ThicknessOf(Material material) =>
        material.ThicknessMetres
        ?? (material.Layers.Count > 0 ? material.Layers.Sum(l => l.ThicknessMetres) : AssumedThicknessMetres);

    /// <summary>Whether a wall reaches from floor to ceiling, or nearly so.</summary>
    public static bool ClosesStorey(Level level, Wall wall) => wall.TopMetres - wall.BaseMetres >= FullShare * level.HeightMetres;

    /// <summary>All solid pieces of walls on a level.</summary>
    /// <param name="level">The level.</param>
    /// <param name="leastThicknessMetres">Thinner walls are drawn this thick.</param>
    public static IReadOnlyList<WallShape> Of(Level level, double leastThicknessMetres)
    {
        var joints = new WallJoints(level, leastThicknessMetres);
        var shapes = new List<WallShape>();
        foreach (Wall wall in level.Walls)
        {
            double half = joints.HalfThicknessOf(wall), length = wall.LengthMetres;
            bool isFull = ClosesStorey(level, wall);
            (Point2 startRight, Point2 startLeft) = joints.CornersAt(wall, isStart: true);
            (Point2 endLeft, Point2 endRight) = joints.CornersAt(wall, isStart: false);
            (Point2 right, Point2 left) = (startRight, startLeft);
            double from = 0;
            foreach (Opening opening in wall.Openings.OrderBy(o => o.OffsetMetres))
            {
                IReadOnlyList<Point2> gap = Along(
                    wall, opening.OffsetMetres, opening.OffsetMetres + opening.WidthMetres, -half, half);
                Add(shapes, wall, opening.OffsetMetres - from, [right, gap[0], gap[3], left], isFull);
                (right, left) = (gap[1], gap[2]);
                from = opening.OffsetMetres + opening.WidthMetres;
            }

            Add(shapes, wall, length - from, [right, endRight, endLeft, left], isFull);
        }

        return shapes;
    }

    /// <summary>A rectangle along a wall, between two distances along it and two distances to its left.</summary>
    public static IReadOnlyList<Point2> Along(Wall wall, double from, double to, double right, double left)
    {
        (Point2 along, Point2 across) = DirectionsOf(wall);
        Point2 a = wall.Start + (from * along), b = wall.Start + (to * along);
        return [a + (right * across), b + (right * across), b + (left * across), a + (left * across)];
    }

    /// <summary>Unit vectors along a wall and to its left.</summary>
    public static (Point2 Along, Point2 Left) DirectionsOf(Wall wall)
    {
        double length = wall.LengthMetres;
        Point2 along = length > 0 ? (1 / length) * (wall.End - wall.Start) : new(1, 0);
        return (along, new(-along.Y, along.X));
    }

    private static void Add(List<WallShape> shapes, Wall wall, double lengthMetres, IReadOnlyList<Point2> corners, bool isFull)
    {
        if (lengthMetres > LeastStretchMetres)
        {
            shapes.Add(new(wall, corners, isFull));
        }
    }
}
