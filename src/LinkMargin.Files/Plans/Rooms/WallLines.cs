using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans.Rooms;

/// <summary>
/// Groups facing edges into lines. Edges that continue one another are grouped too, so that a straight wall stays straight
/// past the rooms beside it.
/// </summary>
internal sealed class WallLines
{
    private readonly IReadOnlyList<RoomShape> rooms;
    private readonly IReadOnlyList<RoomEdge> edges;
    private readonly ILookup<int, FacingPair> facing;
    private readonly UnionFind faces;
    private readonly UnionFind runs;
    private readonly HashSet<(int, int)> clearRooms;
    private readonly SegmentIndex<Segment> written;
    private readonly PlanProblems problems;

    /// <summary>Takes the level's edges, the pairs that face each other, and the written walls.</summary>
    internal WallLines(
        IReadOnlyList<RoomShape> rooms,
        IReadOnlyList<RoomEdge> edges,
        IReadOnlyList<FacingPair> facing,
        SegmentIndex<Segment> written,
        PlanProblems problems)
    {
        this.rooms = rooms;
        this.edges = edges;
        this.facing = facing.ToLookup(p => p.A);
        faces = new UnionFind(edges.Count);
        runs = new UnionFind(edges.Count);
        clearRooms =
        [
            .. facing.Where(p => p.GapMetres > PlanLimits.JoinMetres)
                .SelectMany(p => new[] { (edges[p.A].Room, edges[p.B].Room), (edges[p.B].Room, edges[p.A].Room) }),
        ];
        foreach (FacingPair pair in facing)
        {
            faces.Join(pair.A, pair.B);
            runs.Join(pair.A, pair.B);
        }

        this.written = written;
        this.problems = problems;
    }

    /// <summary>The lines that edges move to; edges already in place belong to none.</summary>
    internal List<WallLine> Lines(SegmentIndex<int> index)
    {
        JoinContinuations(index);
        List<WallLine> lines = [];
        foreach (List<int> run in Groups(runs, Enumerable.Range(0, edges.Count)))
        {
            if (LineOf(run) is { } line)
            {
                Keep(run, line, lines);
                continue;
            }

            // Too far apart as a whole, but the two faces of each single wall may still be joined.
            foreach (List<int> part in Groups(faces, run))
            {
                if (LineOf(part) is { } partLine)
                {
                    Keep(part, partLine, lines);
                }
                else
                {
                    ReportTwoWalls(part);
                }
            }
        }

        return lines;
    }

    private void JoinContinuations(SegmentIndex<int> index)
    {
        for (int a = 0; a < edges.Count; a++)
        {
            Segment e = edges[a].Segment;
            foreach (int b in index.Near(e, PlanLimits.ThickestWallMetres).Where(b => b > a))
            {
                Segment f = edges[b].Segment;
                bool isCorner = edges[a].Room == edges[b].Room && (e.End == f.Start || f.End == e.Start);
                double outOfLine = clearRooms.Contains((edges[a].Room, edges[b].Room))
                    ? PlanLimits.OutOfLineMetres
                    : PlanLimits.JoinMetres;
                if (!isCorner
                    && Point2.Dot(e.Direction, f.Direction) > 0
                    && e.IsParallelTo(f)
                    && e.IsInLineWith(f, outOfLine)
                    && e.Shadow(f).Meet(new Span(0, e.Length)).Length >= -PlanLimits.ThickestWallMetres)
                {
                    runs.Join(a, b);
                }
            }
        }
    }

    private static IEnumerable<List<int>> Groups(UnionFind sets, IEnumerable<int> members) =>
        members.GroupBy(sets.Find).OrderBy(g => g.Key).Select(g => g.Order().ToList()).Where(g => g.Count > 1);

    private void Keep(List<int> members, Segment line, List<WallLine> lines)
    {
        if (members.TrueForAll(m => IsOn(line, edges[m].Segment)))
        {
            return;
        }

        lines.Add(new WallLine(members, line));
        ReportUneven(members);
    }

    private static bool IsOn(Segment line, Segment edge) =>
        Math.Abs(line.Across(edge.Start)) <= 1e-9 && Math.Abs(line.Across(edge.End)) <= 1e-9;

    /// <summary>The middle line of edges, or the line of a written wall among them; null if they are too far apart.</summary>
    private Segment? LineOf(List<int> members)
    {
        Point2 along = new(0, 0);
        Point2 first = edges[members[0]].Segment.Direction;
        foreach (int m in members)
        {
            Segment s = edges[m].Segment;
            double sign = Point2.Dot(first, s.Direction) < 0 ? -1 : 1;
            along += sign * (s.End - s.Start);
        }

        Segment axis = new(new Point2(0, 0), along);
        double[] offsets = [.. members.Select(m => axis.Across(Middle(edges[m].Segment)))];
        double least = offsets.Min(), most = offsets.Max();
        bool wouldFold = members
            .GroupBy(m => edges[m].Room)
            .Any(g => g.Any(m => Point2.Dot(edges[m].Segment.Direction, edges[g.First()].Segment.Direction) < 0));
        if (wouldFold || most - least > PlanLimits.ThickestWallMetres + PlanLimits.RoundingMetres)
        {
            return null;
        }

        if (most - least > 1e-9 && WrittenAmong(members, axis, least, most) is { } wall)
        {
            return wall;
        }

        Point2 left = new(-axis.Direction.Y, axis.Direction.X);
        Point2 start = (axis.Along(edges[members[0]].Segment.Start) * axis.Direction) + (((least + most) / 2) * left);
        return new Segment(start, start + axis.Direction);
    }

    /// <summary>A written wall between the faces gives the wall's position better than the middle line does.</summary>
    private Segment? WrittenAmong(List<int> members, Segment axis, double least, double most)
    {
        foreach (int m in members)
        {
            Segment edge = edges[m].Segment;
            foreach (Segment wall in written.Near(edge, PlanLimits.ThickestWallMetres))
            {
                double offset = axis.Across(Middle(wall));
                if (wall.IsParallelTo(edge)
                    && offset >= least - PlanLimits.AlongMetres
                    && offset <= most + PlanLimits.AlongMetres
                    && edge.Shadow(wall).Meet(new Span(0, edge.Length)).Length > PlanLimits.JoinMetres)
                {
                    return wall;
                }
            }
        }

        return null;
    }

    private void ReportUneven(List<int> members)
    {
        FacingPair[] pairs = [.. members.SelectMany(m => facing[m]).OrderBy(p => p.GapMetres)];
        if (pairs.Length < 2 || pairs[^1].GapMetres - pairs[0].GapMetres <= PlanLimits.UnevenGapMetres)
        {
            return;
        }

        (FacingPair near, FacingPair far) = (pairs[0], pairs[^1]);
        problems.OneOfMany(
            Severity.Warning,
            "uneven gaps between rooms",
            rooms[edges[far.B].Room].Mark,
            $"{Names(far)} are {problems.Lengths.Exact(far.GapMetres)} apart, but {Names(near)}, along the same line, "
                + $"{problems.Lengths.Exact(Math.Max(0, near.GapMetres))}; one straight wall was placed midway, so check "
                + "these rooms' sizes");
    }

    private string Names(FacingPair pair) =>
        $"{Quote.Of(rooms[edges[pair.A].Room].Name)} and {Quote.Of(rooms[edges[pair.B].Room].Name)}";

    /// <summary>Reports each pair of faces among these edges as two separate walls.</summary>
    internal void ReportTwoWalls(IEnumerable<int> members)
    {
        foreach (FacingPair pair in members.SelectMany(m => facing[m]).Where(p => p.GapMetres > PlanLimits.JoinMetres))
        {
            problems.OneOfMany(
                Severity.Warning,
                "rooms a little apart",
                rooms[edges[pair.B].Room].Mark,
                $"rooms {Names(pair)} are {problems.Lengths.Exact(pair.GapMetres)} apart, which makes two walls; make them share an "
                    + "edge for a single wall");
        }
    }

    private static Point2 Middle(Segment s) => 0.5 * (s.Start + s.End);
}

/// <summary>The one line on which the faces of a wall, and of walls that continue it, are placed.</summary>
/// <param name="Members">Positions of the edges among the level's edges.</param>
/// <param name="Line">A stretch of the line.</param>
internal sealed record WallLine(IReadOnlyList<int> Members, Segment Line);
