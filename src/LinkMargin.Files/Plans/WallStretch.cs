namespace LinkMargin.Files.Plans;

/// <summary>A part of a wall with the same neighbours all along.</summary>
/// <param name="Span">The part, metres from the wall's start.</param>
/// <param name="Left">The edge of the room on the left; null where that side is outside every room.</param>
/// <param name="Right">The edge of the room on the right.</param>
internal sealed record WallStretch(Span Span, RoomEdge? Left, RoomEdge? Right)
{
    /// <summary>
    /// The part that a person sees between the corners of the rooms as written, metres from the start of
    /// <paramref name="wall"/>. It is shorter than the whole where walls' thicknesses lay between the rooms.
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

    /// <summary>The rooms on both sides, lower index first; -1 is outside.</summary>
    internal (int Low, int High) Rooms
    {
        get
        {
            (int a, int b) = (Left?.Room ?? -1, Right?.Room ?? -1);
            return a < b ? (a, b) : (b, a);
        }
    }
}
