using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Rooms;
using LinkMargin.Files.Plans.Shapes;

namespace LinkMargin.Files.Plans.Walls;

/// <summary>Finds the rooms on the two sides of a wall, stretch by stretch.</summary>
internal sealed class WallNeighbours
{
    private readonly SegmentIndex<RoomEdge> edges;

    /// <summary>Takes all rooms, written and found.</summary>
    internal WallNeighbours(IEnumerable<RoomShape> rooms) =>
        edges = new SegmentIndex<RoomEdge>([.. rooms.SelectMany(r => r.Edges.Concat(r.HoleEdges))], e => e.Segment);

    /// <summary>The stretches of a wall that have a room on at least one side, from its start.</summary>
    internal IReadOnlyList<WallStretch> Of(Segment wall)
    {
        List<(Span Span, RoomEdge Edge)> lefts = [], rights = [];
        foreach (RoomEdge edge in edges.Near(wall, PlanLimits.AlongMetres))
        {
            if (wall.Shared(edge.Segment, PlanLimits.AlongMetres) is { } span)
            {
                (Point2.Dot(wall.Direction, edge.Segment.Direction) > 0 ? lefts : rights).Add((span, edge));
            }
        }

        Span[] parts = Parts(wall.Length, lefts.Concat(rights).Select(s => s.Span));
        RoomEdge?[] left = EdgesAlong(parts, lefts), right = EdgesAlong(parts, rights);
        List<WallStretch> stretches = [];
        for (int i = 0; i < parts.Length; i++)
        {
            if (left[i] is null && right[i] is null)
            {
                continue;
            }

            if (stretches is [.., { } last]
                && last.Span.To == parts[i].From && last.Left == left[i] && last.Right == right[i])
            {
                stretches[^1] = last with { Span = new Span(last.Span.From, parts[i].To) };
            }
            else
            {
                stretches.Add(new WallStretch(parts[i], left[i], right[i]));
            }
        }

        return stretches;
    }

    /// <summary>The wall cut wherever an edge starts or ends; ends very close together are the same corner.</summary>
    private static Span[] Parts(double lengthMetres, IEnumerable<Span> spans)
    {
        List<double> cuts = [0];
        foreach (double cut in spans.SelectMany(s => new[] { s.From, s.To }).Order())
        {
            if (cut - cuts[^1] > PlanLimits.JoinMetres && lengthMetres - cut > PlanLimits.JoinMetres)
            {
                cuts.Add(cut);
            }
        }

        cuts.Add(lengthMetres);
        return [.. cuts.Skip(1).Select((to, i) => new Span(cuts[i], to))];
    }

    /// <summary>For each part, from the start, the edge that runs along its middle.</summary>
    private static RoomEdge?[] EdgesAlong(Span[] parts, List<(Span Span, RoomEdge Edge)> sides)
    {
        // Rooms do not overlap, so their edges on one side do not either: one pass over both lists finds them.
        (Span Span, RoomEdge Edge)[] inOrder = [.. sides.OrderBy(s => s.Span.From)];
        RoomEdge?[] found = new RoomEdge?[parts.Length];
        int next = 0;
        for (int i = 0; i < parts.Length; i++)
        {
            while (next < inOrder.Length && inOrder[next].Span.To <= parts[i].Middle)
            {
                next++;
            }

            if (next < inOrder.Length && inOrder[next].Span.From < parts[i].Middle)
            {
                found[i] = inOrder[next].Edge;
            }
        }

        return found;
    }
}

/// <summary>A part of a wall with the same neighbours along its length.</summary>
/// <param name="Span">The part, metres from the wall's start.</param>
/// <param name="Left">The edge of the room on the left; null if no room is on that side.</param>
/// <param name="Right">The edge of the room on the right.</param>
internal sealed record WallStretch(Span Span, RoomEdge? Left, RoomEdge? Right)
{
    /// <summary>
    /// The part between the corners of the rooms as written, which a person sees, in metres from the start of
    /// <paramref name="wall"/>. It is shorter than the whole where the thickness of walls lay between the rooms.
    /// </summary>
    internal Span ClearIn(Segment wall)
    {
        Span clear = Span;
        foreach (RoomEdge edge in new[] { Left, Right }.OfType<RoomEdge>())
        {
            clear = clear.Meet(wall.Shadow(edge.Written));
        }

        return clear.Length > PlanLimits.JoinMetres ? clear : Span;
    }

    /// <summary>The rooms on both sides, lower index first; -1 is no room.</summary>
    internal (int Low, int High) Rooms
    {
        get
        {
            (int a, int b) = (Left?.Room ?? -1, Right?.Room ?? -1);
            return a < b ? (a, b) : (b, a);
        }
    }
}
