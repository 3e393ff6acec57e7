using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Rooms;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans.Walls;

/// <summary>
/// Finds written walls that cross each other or a room's wall. Each crossing cuts both, and every piece may close a room, so a
/// level with very many is refused before it is laid out.
/// </summary>
internal static class WallCrossings
{
    /// <summary>Reports crossings if there are more than a level may have: the first ones, then their number.</summary>
    internal static bool AreFew(
        IReadOnlyList<RoomShape> rooms, IReadOnlyList<WrittenWall> walls, PlanDraft draft, PlanProblems problems)
    {
        RoomEdge[] edges = [.. rooms.SelectMany(r => r.Edges)];
        Segment[] all = [.. walls.Select(w => w.Segment), .. edges.Select(e => e.Segment)];
        SegmentIndex<int> index = new([.. Enumerable.Range(0, all.Length)], i => all[i]);
        int count = 0;
        List<(int Wall, int Other, Point2 Place)> first = [];
        for (int i = 0; i < walls.Count; i++)
        {
            foreach (int j in index.Near(all[i], 0).Where(j => j > i))
            {
                if (Crossing(all[i], all[j]) is { } place && count++ < PlanLimits.MostOfAKind)
                {
                    first.Add((i, j, place));
                }
            }
        }

        if (count <= PlanLimits.MostCrossings)
        {
            return true;
        }

        problems.Error(
            walls[0].Mark,
            FormattableString.Invariant(
                $"walls of level {Quote.Of(draft.LevelName)} cross in {count} places, where at most {PlanLimits.MostCrossings} ")
                + "are allowed; end walls where they meet, or check the numbers they were drawn from");
        foreach ((int wall, int other, Point2 place) in first)
        {
            string through = other < walls.Count ? walls[other].Label(problems.Lengths) : $"a wall of room {Quote.Of(rooms[edges[other - walls.Count].Room].Name)}";
            problems.Error(walls[wall].Mark, $"{walls[wall].Label(problems.Lengths)} crosses {through} at {problems.Lengths.Place(place)}");
        }

        problems.Error(walls[^1].Mark, FormattableString.Invariant($"... and {count - first.Count} more crossings"));
        return false;
    }

    /// <summary>Where two segments cross, away from the ends of both; null if they do not.</summary>
    private static Point2? Crossing(Segment a, Segment b)
    {
        double sine = Point2.Cross(a.Direction, b.Direction);
        if (Math.Abs(sine) <= PlanLimits.ParallelSine)
        {
            return null;
        }

        double onA = Point2.Cross(b.Start - a.Start, b.Direction) / sine;
        double onB = Point2.Cross(b.Start - a.Start, a.Direction) / sine;
        return IsInside(onA, a.Length) && IsInside(onB, b.Length) ? a.PointAt(onA) : null;
    }

    private static bool IsInside(double alongMetres, double lengthMetres) =>
        alongMetres > PlanLimits.AlongMetres && alongMetres < lengthMetres - PlanLimits.AlongMetres;
}
