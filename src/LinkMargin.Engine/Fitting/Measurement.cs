using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Fitting;

/// <summary>What was received on one link with one pair of devices: one row that a person wrote, or the mean of several.</summary>
/// <param name="Transmitter">Where the transmitter was.</param>
/// <param name="Receiver">Where the receiver was.</param>
/// <param name="Devices">The pair of devices.</param>
/// <param name="LevelDbm">The level received, dBm; where nothing was heard, the level below which nothing is.</param>
/// <param name="IsHeard">Whether there was a level.</param>
public sealed record Measurement(MeasurementEnd Transmitter, MeasurementEnd Receiver, string Devices, double LevelDbm, bool IsHeard)
{
    /// <summary>How many samples it is the mean of.</summary>
    public int SampleCount { get; init; } = 1;

    /// <summary>The lines of the file it is from.</summary>
    public IReadOnlyList<int> Lines { get; init; } = [];
}

/// <summary>Where one end of a measurement was.</summary>
/// <param name="Name">The spot or seat it was at, or its coordinates as written.</param>
/// <param name="LevelIndex">The level it was on; 0 is the lowest.</param>
/// <param name="Plan">Where on the plan.</param>
/// <param name="HeightMetres">Above the level's floor, metres.</param>
public sealed record MeasurementEnd(string Name, int LevelIndex, Point2 Plan, double HeightMetres)
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
