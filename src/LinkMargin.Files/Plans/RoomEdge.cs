namespace LinkMargin.Files.Plans;

/// <summary>One straight edge of a room, the room on its left.</summary>
/// <param name="room">Index of the room in the level.</param>
/// <param name="segment">Where the edge runs in the plan as laid out.</param>
/// <param name="written">Where it ran as written: shorter where a wall's thickness lay between two rooms.</param>
internal sealed class RoomEdge(int room, Segment segment, Segment written)
{
    /// <summary>Index of the room in the level.</summary>
    internal int Room { get; } = room;

    /// <summary>Where the edge runs in the plan as laid out.</summary>
    internal Segment Segment { get; } = segment;

    /// <summary>Where it ran as written; distances a person measures along it count from here.</summary>
    internal Segment Written { get; } = written;

    /// <summary>Whether its outward side looks this way, within 45 degrees.</summary>
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
