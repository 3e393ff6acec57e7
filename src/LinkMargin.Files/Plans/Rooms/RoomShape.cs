using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans.Rooms;

/// <summary>A room's outline as edges in order, anticlockwise, so that the room lies to the left of each.</summary>
/// <param name="Index">Its place among the level's rooms.</param>
/// <param name="Name">Its name.</param>
/// <param name="Mark">Where it was written.</param>
/// <param name="Edges">The edges of its outline.</param>
internal sealed record RoomShape(int Index, string Name, Mark Mark, IReadOnlyList<RoomEdge> Edges)
{
    /// <summary>Edges around a hole in a found room, such as a core; empty for a written one.</summary>
    internal IReadOnlyList<RoomEdge> HoleEdges { get; init; } = [];

    /// <summary>The corners of its outline.</summary>
    internal IEnumerable<Point2> Corners => Edges.Select(e => e.Segment.Start);

    /// <summary>Edges from corners in order, each with its written position.</summary>
    internal static RoomEdge[] EdgesOf(int room, IReadOnlyList<Point2> corners) =>
        [.. corners.Select((c, i) =>
        {
            Segment segment = new(c, corners[(i + 1) % corners.Count]);
            return new RoomEdge(room, segment, segment);
        })];
}

/// <summary>One straight edge of a room, with the room on its left.</summary>
/// <param name="room">Index of the room in the level.</param>
/// <param name="segment">Its position in the plan as laid out.</param>
/// <param name="written">Its position as written: shorter where a wall's thickness lay between two rooms.</param>
internal sealed class RoomEdge(int room, Segment segment, Segment written)
{
    /// <summary>Index of the room in the level.</summary>
    internal int Room { get; } = room;

    /// <summary>Its position in the plan as laid out.</summary>
    internal Segment Segment { get; } = segment;

    /// <summary>Its position as written; written distances along it are measured from its ends.</summary>
    internal Segment Written { get; } = written;

    /// <summary>Whether its outward side faces this way, within 45 degrees.</summary>
    internal bool Faces(PlanSide side)
    {
        // The room is on the left, so outward is right of the direction of travel.
        (double dx, double dy) = (Segment.End.X - Segment.Start.X, Segment.End.Y - Segment.Start.Y);
        double slack = 1e-9 * Segment.Length;
        return side switch
        {
            PlanSide.North => dx < 0 && -dx >= Math.Abs(dy) - slack,
            PlanSide.South => dx > 0 && dx >= Math.Abs(dy) - slack,
            PlanSide.East => dy > 0 && dy >= Math.Abs(dx) - slack,
            _ => dy < 0 && -dy >= Math.Abs(dx) - slack,
        };
    }
}
