using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Links.Around;

/// <summary>A place where walls end or meet so that more than half of what lies round it is free.</summary>
/// <param name="At">Where.</param>
/// <param name="Outward">Unit vector to the middle of the free side.</param>
/// <param name="Kind">The free end of one wall, or the outer corner of several.</param>
/// <param name="Wall">One of the walls.</param>
internal sealed record WallCorner(Point2 At, Point2 Outward, TurnKind Kind, string Wall)
{
    private const double SameMetres = 0.01;

    // Walls that meet at less of an angle than this to a straight line make no corner, degrees.
    private const double StraightDegrees = 5;

    /// <summary>The corners of a level's walls, each once.</summary>
    internal static IEnumerable<WallCorner> Of(Level level)
    {
        Wall[] walls = [.. level.Walls.Where(w => w.LengthMetres > SameMetres)];
        var known = new List<Point2>();
        foreach (Point2 at in walls.SelectMany(w => new[] { w.Start, w.End }))
        {
            if (known.Exists(other => other.DistanceTo(at) <= SameMetres))
            {
                continue;
            }

            known.Add(at);
            Wall[] there = [.. walls.Where(wall => Reaches(wall, at))];
            double[] ways = [.. there.SelectMany(wall => WaysFrom(at, wall)).Order()];
            if (Widest(ways) is (double from, double gap) && gap >= 180 + StraightDegrees)
            {
                double middle = double.DegreesToRadians(from + (gap / 2));
                yield return new WallCorner(
                    at,
                    new Point2(Math.Cos(middle), Math.Sin(middle)),
                    there.Length == 1 ? TurnKind.WallEnd : TurnKind.WallCorner,
                    there.Select(wall => wall.Name).Min(StringComparer.Ordinal)!);
            }
        }
    }

    private static bool Reaches(Wall wall, Point2 at)
    {
        Point2 along = wall.End - wall.Start;
        double share = Math.Clamp(Point2.Dot(at - wall.Start, along) / Point2.Dot(along, along), 0, 1);
        return at.DistanceTo(wall.Start + (share * along)) <= SameMetres;
    }

    // The directions in which a wall runs from a place on it, degrees.
    private static IEnumerable<double> WaysFrom(Point2 at, Wall wall)
    {
        foreach ((Point2 here, Point2 there) in new[] { (wall.Start, wall.End), (wall.End, wall.Start) })
        {
            if (at.DistanceTo(there) > SameMetres)
            {
                Point2 way = there - here;
                yield return double.RadiansToDegrees(Math.Atan2(way.Y, way.X));
            }
        }
    }

    // The widest free angle between two neighbouring directions: from where, and how wide, degrees.
    private static (double From, double Gap) Widest(double[] ways)
    {
        (double From, double Gap) widest = (0, 0);
        for (int i = 0; i < ways.Length; i++)
        {
            double next = i + 1 < ways.Length ? ways[i + 1] : ways[0] + 360;
            widest = next - ways[i] > widest.Gap ? (ways[i], next - ways[i]) : widest;
        }

        return widest;
    }
}
