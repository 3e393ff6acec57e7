using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>Where a player sits.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LevelIndex">The level it is on; 0 is the lowest.</param>
/// <param name="Plan">Where the hands are on the plan.</param>
/// <param name="HandsMetres">Height of the hands above the level's floor, metres.</param>
/// <param name="FacingDegrees">Where the player looks, degrees anticlockwise from the x axis; null where not stated.</param>
/// <param name="RequiredDb">The margin the user asks for, dB.</param>
public sealed record Seat(string Name, int LevelIndex, Point2 Plan, double HandsMetres, double? FacingDegrees, double RequiredDb)
{
    /// <summary>The fixture the player looks at, where the direction is that; null where it is said in degrees or not at all.</summary>
    public string? Faces { get; init; }
}
