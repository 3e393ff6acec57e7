using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Rooms;
using LinkMargin.Files.Plans.Shapes;

namespace LinkMargin.Files.Plans.Walls;

/// <summary>Turns rooms' edges into segments of wall: an edge that two rooms share gives one.</summary>
internal static class RoomWalls
{
    /// <summary>Every place where rooms have an edge, once; west or south end first.</summary>
    internal static IReadOnlyList<Segment> Distinct(IReadOnlyList<RoomShape> rooms, PointIndex corners)
    {
        RoomEdge[] edges = [.. rooms.SelectMany(r => r.Edges)];
        SegmentIndex<RoomEdge> index = new(edges, e => e.Segment);
        return
        [
            .. edges.SelectMany(e => Remaining(
                e.Segment,
                index.Near(e.Segment, PlanLimits.JoinMetres)
                    .Where(other => other.Room < e.Room && Point2.Dot(other.Segment.Direction, e.Segment.Direction) < 0)
                    .Select(other => e.Segment.Shared(other.Segment, PlanLimits.JoinMetres)),
                corners)),
        ];
    }

    /// <summary>The parts of the rooms' walls that have no written wall along them.</summary>
    internal static IReadOnlyList<Segment> Less(
        IReadOnlyList<Segment> walls, IReadOnlyList<WrittenWall> written, PointIndex corners)
    {
        SegmentIndex<WrittenWall> index = new(written, w => w.Segment);
        return
        [
            .. walls.SelectMany(s => Remaining(
                s,
                index.Near(s, PlanLimits.AlongMetres).Select(w => s.Shared(w.Segment, PlanLimits.AlongMetres)),
                corners)),
        ];
    }

    private static IEnumerable<Segment> Remaining(Segment whole, IEnumerable<Span?> taken, PointIndex corners) =>
        new Span(0, whole.Length)
            .Less(taken.OfType<Span>())
            .Select(s => new Segment(corners.Snap(whole.PointAt(s.From)), corners.Snap(whole.PointAt(s.To))))
            .Where(s => s.Start != s.End)
            .Select(s => s.Canonical);
}
