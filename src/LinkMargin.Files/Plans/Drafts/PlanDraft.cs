using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans.Drafts;

/// <summary>One level's plan as written, lengths in metres. Outer and inner are null if the file does not give them.</summary>
internal sealed record PlanDraft(
    string LevelName,
    double HeightMetres,
    Material? Outer,
    Material? Inner,
    IReadOnlyList<RoomDraft> Rooms,
    IReadOnlyList<WallDraft> Walls,
    IReadOnlyList<OpeningDraft> Openings);

/// <summary>A room as written: a rectangle is given as its four corners.</summary>
internal sealed record RoomDraft(string Name, IReadOnlyList<Point2> Outline, Mark Mark);

/// <summary>A wall as written, along a polyline. Top is null for a full-height wall.</summary>
internal sealed record WallDraft(
    string? Name, IReadOnlyList<Point2> Along, Material Material, double BaseMetres, double? TopMetres, Mark Mark);

/// <summary>
/// A door, window or gap as written. <paramref name="AtMetres"/> is the distance from the west or south end of its stretch of
/// wall to the nearer jamb; null centres it there.
/// </summary>
internal sealed record OpeningDraft(
    string? Name,
    OpeningKind Kind,
    OpeningPlace Place,
    double? AtMetres,
    double WidthMetres,
    double SillMetres,
    double HeightMetres,
    Material? Leaf,
    bool IsOpen,
    Mark Mark);

/// <summary>The written position of an opening.</summary>
internal abstract record OpeningPlace
{
    /// <summary>In the wall that two rooms share; <c>outside</c> is a room here.</summary>
    internal sealed record Between(string RoomA, string RoomB) : OpeningPlace;

    /// <summary>In one side of a room: north, south, east or west.</summary>
    internal sealed record SideOf(string Room, PlanSide Side) : OpeningPlace;

    /// <summary>In the named wall.</summary>
    internal sealed record InWall(string Wall) : OpeningPlace;
}

/// <summary>A side of a room on the plan; north is towards larger y.</summary>
internal enum PlanSide
{
    /// <summary>Larger y.</summary>
    North,

    /// <summary>Larger x.</summary>
    East,

    /// <summary>Smaller y.</summary>
    South,

    /// <summary>Smaller x.</summary>
    West,
}
