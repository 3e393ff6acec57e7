using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Shapes;

namespace LinkMargin.Files.Plans.Rooms;

/// <summary>
/// Moves rooms that face each other across no more than a wall's thickness onto one line, so that they share an edge.
/// Rooms always stay closed, so no ray can slip between their corners.
/// </summary>
internal static class RoomJoiner
{
    /// <summary>After this many rounds of dropping some lines, all are dropped.</summary>
    private const int MostRounds = 5;

    /// <summary>The rooms, with small gaps between them closed and nearly coincident corners merged.</summary>
    internal static IReadOnlyList<RoomShape> Join(
        IReadOnlyList<RoomShape> rooms, IReadOnlyList<Segment> written, PlanProblems problems)
    {
        RoomEdge[] edges = [.. rooms.SelectMany(r => r.Edges)];
        SegmentIndex<int> index = new([.. Enumerable.Range(0, edges.Length)], i => edges[i].Segment);
        List<FacingPair> facing = FacingEdges.Find(rooms, edges, index, problems);
        if (facing.TrueForAll(p => Math.Abs(p.GapMetres) <= 1e-9))
        {
            return SnapCorners(rooms);
        }

        WallLines walls = new(rooms, edges, facing, new SegmentIndex<Segment>(written, s => s), problems);
        List<WallLine> lines = walls.Lines(index);
        HashSet<(int, int)> overlapping = [.. RoomOverlaps.Find(rooms).Select(o => (o.A.Index, o.B.Index))];
        for (int round = 1; ; round++)
        {
            (IReadOnlyList<RoomShape> moved, HashSet<int> broken) = Move(rooms, edges, lines);
            if (broken.Count == 0)
            {
                foreach ((RoomShape a, RoomShape b, _) in RoomOverlaps.Find(moved))
                {
                    if (!overlapping.Contains((a.Index, b.Index)))
                    {
                        broken.UnionWith([a.Index, b.Index]);
                    }
                }
            }

            if (broken.Count == 0)
            {
                return SnapCorners(moved);
            }

            // Each round drops the lines that touch a broken room; without lines nothing moves, so the loop ends.
            List<WallLine> spoilt = round == MostRounds
                ? lines
                : lines.FindAll(l => l.Members.Any(m => broken.Contains(edges[m].Room)));
            walls.ReportTwoWalls(spoilt.SelectMany(l => l.Members));
            lines = [.. lines.Except(spoilt)];
        }
    }

    private static (IReadOnlyList<RoomShape> Rooms, HashSet<int> Broken) Move(
        IReadOnlyList<RoomShape> rooms, RoomEdge[] edges, List<WallLine> lines)
    {
        Dictionary<RoomEdge, Segment> target = [];
        foreach (WallLine line in lines)
        {
            foreach (int m in line.Members)
            {
                target[edges[m]] = line.Line;
            }
        }

        HashSet<int> broken = [];
        List<RoomShape> moved = [];
        foreach (RoomShape room in rooms)
        {
            RoomShape? shape = RoomMover.Move(room, e => target.TryGetValue(e, out Segment line) ? Towards(line, e) : null);
            if (shape is null)
            {
                broken.Add(room.Index);
            }

            moved.Add(shape ?? room);
        }

        return (moved, broken);
    }

    /// <summary>The line, in the direction of the edge.</summary>
    private static Segment Towards(Segment line, RoomEdge edge) =>
        Point2.Dot(line.Direction, edge.Segment.Direction) < 0 ? line.Reversed : line;

    private static List<RoomShape> SnapCorners(IReadOnlyList<RoomShape> rooms)
    {
        // Corners are visited from west to east, so the order of rooms does not decide which of two close ones remains.
        PointIndex known = new(PlanLimits.JoinMetres);
        foreach (Point2 corner in rooms.SelectMany(r => r.Corners).OrderBy(c => c.X).ThenBy(c => c.Y))
        {
            known.SnapOrAdd(corner);
        }

        return [.. rooms.Select(r => r with { Edges = [.. r.Edges.Select(e => Snapped(e, known)).OfType<RoomEdge>()] })];
    }

    private static RoomEdge? Snapped(RoomEdge edge, PointIndex known)
    {
        Segment s = edge.Segment;
        (Point2 start, Point2 end) = (known.Snap(s.Start), known.Snap(s.End));
        return start == end ? null
            : start == s.Start && end == s.End ? edge
            : new RoomEdge(edge.Room, new Segment(start, end), edge.Written);
    }
}
