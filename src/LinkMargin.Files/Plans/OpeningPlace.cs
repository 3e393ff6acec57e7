namespace LinkMargin.Files.Plans;

/// <summary>Where an opening was said to be.</summary>
internal abstract record OpeningPlace
{
    /// <summary>In the wall that two rooms share; <c>outside</c> is a room here.</summary>
    internal sealed record Between(string RoomA, string RoomB) : OpeningPlace;

    /// <summary>In one side of a room: north, south, east or west.</summary>
    internal sealed record SideOf(string Room, PlanSide Side) : OpeningPlace;

    /// <summary>In the named wall.</summary>
    internal sealed record InWall(string Wall) : OpeningPlace;
}
