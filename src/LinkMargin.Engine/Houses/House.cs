using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>Everything described by one house file, checked, in metres.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Levels">Lowest first, at least one.</param>
/// <param name="Fixtures">Things that stand in its rooms.</param>
/// <param name="Spots">Candidate places for a console.</param>
/// <param name="Seats">Where players sit.</param>
/// <param name="Console">The console's radio, where a spot has no other.</param>
/// <param name="Controller">The controller's radio.</param>
public sealed record House(
    string Name,
    IReadOnlyList<Level> Levels,
    IReadOnlyList<Fixture> Fixtures,
    IReadOnlyList<Spot> Spots,
    IReadOnlyList<Seat> Seats,
    Radio Console,
    Radio Controller)
{
    /// <summary>Where a console may stand; empty where the file does not say.</summary>
    public IReadOnlyList<Zone> Zones { get; init; } = [];

    /// <summary>Where no console may stand.</summary>
    public IReadOnlyList<KeepOut> KeepOuts { get; init; } = [];

    /// <summary>Displays, devices, passages and cables; empty where the file has none.</summary>
    public Cabling Cabling { get; init; } = Cabling.None;

    /// <summary>What lies below and above it.</summary>
    public Surroundings Surroundings { get; init; } = Surroundings.Plain;

    /// <summary>The radio of the console at a spot.</summary>
    public Radio ConsoleAt(Spot spot) => spot.Radio ?? Console;

    /// <summary>Where a spot is in the house.</summary>
    public Point3 PositionOf(Spot spot) => spot.Plan.At(Levels[spot.LevelIndex].ElevationMetres + spot.HeightMetres);

    /// <summary>The level at a height above the lowest floor; the thickness of a floor is shared between the levels it separates.</summary>
    internal int LevelIndexAt(double heightMetres)
    {
        for (int i = 0; i + 1 < Levels.Count; i++)
        {
            if (heightMetres < (Levels[i].CeilingMetres + Levels[i + 1].ElevationMetres) / 2)
            {
                return i;
            }
        }

        return Levels.Count - 1;
    }

    /// <summary>Where a seat's hands are in the house.</summary>
    public Point3 PositionOf(Seat seat) => seat.Plan.At(Levels[seat.LevelIndex].ElevationMetres + seat.HandsMetres);
}
