using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Readings;

/// <summary>Where one end of a reading was.</summary>
/// <param name="Name">The spot or seat it was at, or its coordinates as written.</param>
/// <param name="LevelIndex">The level it was on; 0 is the lowest.</param>
/// <param name="Plan">Where on the plan.</param>
/// <param name="HeightMetres">Above the level's floor, metres.</param>
public sealed record ReadingEnd(string Name, int LevelIndex, Point2 Plan, double HeightMetres)
{
    /// <summary>The seat it was at; null where it was at none.</summary>
    public Seat? Seat { get; init; }

    /// <summary>The spot it was at; null where it was at none.</summary>
    public Spot? Spot { get; init; }

    /// <summary>Where that is in a house.</summary>
    public Point3 PositionIn(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        return Plan.At(house.Levels[LevelIndex].ElevationMetres + HeightMetres);
    }
}
