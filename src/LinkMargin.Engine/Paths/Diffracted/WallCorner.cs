using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>A place where walls end or meet so that more than half of the space around it is free.</summary>
/// <param name="At">Where.</param>
/// <param name="Outward">Unit vector to the middle of the free side.</param>
/// <param name="Kind">The free end of one straight run of walls, or the outer corner of several.</param>
/// <param name="Wall">Number of one of the walls, the first by its name.</param>
internal sealed record WallCorner(Point2 At, Point2 Outward, TurnKind Kind, int Wall)
{
    // Walls that are straighter than this where they meet make no corner, degrees.
    private const double StraightDegrees = 5;

    /// <summary>The corner at a joint of walls; null where there is none.</summary>
    internal static WallCorner? Of(WallJoint joint, Func<int, string> nameOf)
    {
        double[] ways = [.. joint.Ways.Select(way => double.RadiansToDegrees(Math.Atan2(way.Y, way.X))).Order()];
        (double from, double gap) = Widest(ways);
        if (gap < 180 + StraightDegrees)
        {
            return null;
        }

        double middle = double.DegreesToRadians(from + (gap / 2));
        Point2 outward = new(Math.Cos(middle), Math.Sin(middle));
        return new WallCorner(
            Outermost(joint.Ends, outward),
            outward,
            joint.RunCount == 1 ? TurnKind.WallEnd : TurnKind.WallCorner,
            joint.Walls.MinBy(nameOf, StringComparer.Ordinal));
    }

    // In the middle of the ends, and as far out as the outermost of them.
    private static Point2 Outermost(IReadOnlyList<Point2> ends, Point2 outward)
    {
        Point2 sum = new(0, 0);
        double farthest = double.NegativeInfinity;
        foreach (Point2 end in ends)
        {
            sum += end - ends[0];
            farthest = Math.Max(farthest, Point2.Dot(end - ends[0], outward));
        }

        Point2 middle = (1.0 / ends.Count) * sum;
        return ends[0] + middle + ((farthest - Point2.Dot(middle, outward)) * outward);
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
