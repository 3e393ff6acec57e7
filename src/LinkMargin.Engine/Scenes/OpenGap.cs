using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// A gap in the walls of a level. Openings of one straight run that touch or overlap, such as one cut with its wall, are one; so are
/// those of two runs that meet end to end and continue in the same direction.
/// </summary>
/// <param name="Start">One jamb on the plan.</param>
/// <param name="End">The other.</param>
/// <param name="Low">Its lower edge above the lowest floor, metres.</param>
/// <param name="High">Its upper edge, metres.</param>
/// <param name="Name">Number of its name, the first in alphabetical order of those it is made of.</param>
internal sealed record OpenGap(Point2 Start, Point2 End, double Low, double High, int Name)
{
    private const double SameMetres = WallJoint.SameMetres;

    /// <summary>The open gaps of a level.</summary>
    /// <param name="runs">Its straight runs.</param>
    /// <param name="walls">Its walls.</param>
    /// <param name="names">The names by number.</param>
    internal static IReadOnlyList<OpenGap> Of(
        IReadOnlyList<StraightRun> runs, IReadOnlyList<WallPanel> walls, IReadOnlyList<string> names)
    {
        OpenGap[] gaps = [.. runs.SelectMany(run => Joined(AllIn(run, walls), TouchesOrOverlaps, names))];
        return Joined(gaps, (one, other) => one.GoesOnIn(other), names);
    }

    // Each in the direction of its run.
    private static OpenGap[] AllIn(StraightRun run, IReadOnlyList<WallPanel> walls) =>
    [
        .. from i in run.Walls
           let wall = walls[i]
           let along = (1 / wall.Start.DistanceTo(wall.End)) * (wall.End - wall.Start)
           let isTurned = Point2.Dot(along, run.End - run.Start) < 0
           from opening in wall.Openings
           where opening.Filling < 0 && opening.To > opening.From
           let start = wall.Start + (opening.From * along)
           let end = wall.Start + (opening.To * along)
           select new OpenGap(isTurned ? end : start, isTurned ? start : end, opening.Low, opening.High, opening.Name),
    ];

    // All that pairs connect become one, between the two jambs that are farthest apart.
    private static OpenGap[] Joined(OpenGap[] gaps, Func<OpenGap, OpenGap, bool> areOne, IReadOnlyList<string> names)
    {
        var clusters = new Clusters(gaps.Length);
        for (int i = 0; i < gaps.Length; i++)
        {
            for (int j = i + 1; j < gaps.Length; j++)
            {
                if (gaps[i].IsAsHighAs(gaps[j]) && areOne(gaps[i], gaps[j]))
                {
                    clusters.Join(i, j);
                }
            }
        }

        return [.. clusters.All().Select(cluster => cluster.Length == 1 ? gaps[cluster[0]] : Whole(cluster))];

        OpenGap Whole(int[] cluster)
        {
            OpenGap[] parts = [.. cluster.Select(i => gaps[i])];
            Point2[] jambs = [.. parts.SelectMany(part => new[] { part.Start, part.End })];
            (Point2 start, Point2 end) = jambs
                .SelectMany((one, i) => jambs[(i + 1)..].Select(other => (one, other)))
                .MaxBy(pair => pair.one.DistanceTo(pair.other));
            int name = parts.Select(part => part.Name).MinBy(part => names[part], StringComparer.Ordinal);
            return new OpenGap(start, end, parts.Min(part => part.Low), parts.Max(part => part.High), name);
        }
    }

    private bool IsAsHighAs(OpenGap other) =>
        Math.Abs(Low - other.Low) <= SameMetres && Math.Abs(High - other.High) <= SameMetres;

    // For gaps of one straight run, both in its direction.
    private static bool TouchesOrOverlaps(OpenGap one, OpenGap other) =>
        IsClearOf(one, other) <= SameMetres && IsClearOf(other, one) <= SameMetres;

    // How far the other starts beyond its end, metres.
    private static double IsClearOf(OpenGap one, OpenGap other)
    {
        double width = one.Start.DistanceTo(one.End);
        return Point2.Dot(other.Start - one.End, (1 / width) * (one.End - one.Start));
    }

    private bool GoesOnIn(OpenGap other) =>
        Goes(Start, End, other.End, other.Start) || Goes(Start, End, other.Start, other.End)
        || Goes(End, Start, other.Start, other.End) || Goes(End, Start, other.End, other.Start);

    // Whether two meet at these jambs and continue in the same direction.
    private static bool Goes(Point2 here, Point2 back, Point2 there, Point2 on) =>
        here.DistanceTo(there) <= SameMetres
        && back.DistanceTo(on) >= back.DistanceTo(here) + there.DistanceTo(on) - SameMetres;
}
