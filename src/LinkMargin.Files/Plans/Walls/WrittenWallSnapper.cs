using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Rooms;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans.Walls;

/// <summary>
/// Moves the ends of written walls onto what they nearly touch: a room's corner, another end, a room's edge, another
/// wall. No end moves by more than the tolerance for a wall along an edge.
/// </summary>
internal static class WrittenWallSnapper
{
    private const string Twice = "walls written twice";

    /// <summary>The walls with their ends joined, west or south end first; a duplicate is reported and kept once.</summary>
    internal static IReadOnlyList<WrittenWall> Snap(
        IReadOnlyList<WrittenWall> walls, IReadOnlyList<RoomShape> rooms, PlanProblems problems)
    {
        PointIndex ends = new(PlanLimits.AlongMetres);
        HashSet<Point2> settled = [.. rooms.SelectMany(r => r.Corners)];
        foreach (Point2 corner in settled)
        {
            ends.Add(corner);
        }

        SegmentIndex<Segment> edges = new([.. rooms.SelectMany(r => r.Edges).Select(e => e.Segment)], s => s);
        Segment[] bodies = [.. walls.Select(w => new Segment(OntoRooms(w.Segment.Start), OntoRooms(w.Segment.End)))];
        SegmentIndex<Segment> others = new(bodies, s => s);
        HashSet<(Point2, Point2, double, double)> seen = [];
        List<WrittenWall> snapped = [];
        for (int i = 0; i < walls.Count; i++)
        {
            Segment whole = new(OntoWall(bodies[i].Start), OntoWall(bodies[i].End));
            WrittenWall wall = walls[i] with { Segment = whole.Canonical };
            if (whole.Start.DistanceTo(whole.End) <= PlanLimits.JoinMetres)
            {
                problems.Error(wall.Mark, $"{walls[i].Label(problems.Lengths)} is shorter than {problems.Lengths.Fine(PlanLimits.AlongMetres)}, the distance within which wall ends are "
                    + "joined; lengthen it");
            }
            else if (seen.Add((wall.Segment.Start, wall.Segment.End, wall.BaseMetres, wall.TopMetres)))
            {
                snapped.Add(wall);
            }
            else
            {
                problems.OneOfMany(Severity.Error, Twice, wall.Mark, $"{walls[i].Label(problems.Lengths)} is written twice; remove one");
            }
        }

        return snapped;

        Point2 OntoRooms(Point2 p)
        {
            if (ends.Nearest(p) is { } end)
            {
                return end;
            }

            if (Nearest(p, edges) is { } onEdge)
            {
                settled.Add(onEdge);
                p = onEdge;
            }

            ends.Add(p);
            return p;
        }

        Point2 OntoWall(Point2 p) => settled.Contains(p) ? p : Nearest(p, others) ?? p;
    }

    /// <summary>The nearest place on a segment that does not end at the point, within the tolerance, or null.</summary>
    private static Point2? Nearest(Point2 p, SegmentIndex<Segment> index)
    {
        Point2? best = null;
        double bestMetres = PlanLimits.AlongMetres + PlanLimits.RoundingMetres;
        foreach (Segment s in index.Near(p, bestMetres).Where(s => s.Start != s.End && s.Start != p && s.End != p))
        {
            double metres = s.DistanceTo(p);
            if (metres < bestMetres)
            {
                (best, bestMetres) = (s.NearestTo(p), metres);
            }
        }

        return best;
    }
}
