using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans;

/// <summary>A room's outline as edges in order, anticlockwise, so that the room lies to the left of each.</summary>
/// <param name="Index">Its place among the level's rooms.</param>
/// <param name="Name">Its name.</param>
/// <param name="Mark">Where it was written.</param>
/// <param name="Edges">The edges of its outline.</param>
internal sealed record RoomShape(int Index, string Name, Mark Mark, IReadOnlyList<RoomEdge> Edges)
{
    /// <summary>Edges round what stands inside a found room, such as a core; empty for a written one.</summary>
    internal IReadOnlyList<RoomEdge> HoleEdges { get; init; } = [];

    /// <summary>The corners of its outline.</summary>
    internal IEnumerable<Point2> Corners => Edges.Select(e => e.Segment.Start);

    /// <summary>Edges from corners in order; each edge runs as written.</summary>
    internal static RoomEdge[] EdgesOf(int room, IReadOnlyList<Point2> corners) =>
        [.. corners.Select((c, i) =>
        {
            Segment segment = new(c, corners[(i + 1) % corners.Count]);
            return new RoomEdge(room, segment, segment);
        })];
}
