using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Runs;

/// <summary>What a leg of a cable's route is.</summary>
public enum LegKind
{
    /// <summary>Between a socket and the wall.</summary>
    ToWall,

    /// <summary>Between a passage and the wall.</summary>
    ToPassage,

    /// <summary>Along a wall at the floor.</summary>
    AlongFloor,

    /// <summary>Along a wall under the ceiling.</summary>
    AlongCeiling,

    /// <summary>Up or down a wall.</summary>
    Riser,

    /// <summary>Through a hole bored in a wall.</summary>
    ThroughWall,

    /// <summary>Through a hole bored in a ceiling, into the floor above.</summary>
    ThroughCeiling,

    /// <summary>Through a hole bored in a floor, into the space below.</summary>
    ThroughFloor,

    /// <summary>Through a hole bored through a whole floor.</summary>
    ThroughSlab,

    /// <summary>In a floor, along its joists, and across them where it must be.</summary>
    InFloor,

    /// <summary>Through a passage that is there.</summary>
    ThroughPassage,
}

/// <summary>One leg of a cable's route.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Where">The room, wall, passage or level it belongs to; for a floor, the level below it.</param>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="LengthMetres">Its length along structure, metres.</param>
/// <param name="Holes">Holes to be bored for it.</param>
public sealed record RouteLeg(LegKind Kind, string Where, Point3 From, Point3 To, double LengthMetres, int Holes)
{
    /// <summary>
    /// Where it turns: in a floor between the part along the joists and the part across; beside a socket at the wall, at the socket's
    /// height; null where it is straight.
    /// </summary>
    public Point3? Corner { get; init; }

    /// <summary>Corners of 90° within it: those of a passage.</summary>
    public int InnerBends { get; init; }

    /// <summary>How many of its holes are in joists.</summary>
    public int JoistHoles => Kind == LegKind.InFloor ? Holes : 0;
}
