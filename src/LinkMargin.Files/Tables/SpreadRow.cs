namespace LinkMargin.Files.Tables;

/// <summary>One row of the table of spreads. Which of the figures it has depends on what it is the spread of.</summary>
/// <param name="Name">What the program calls it.</param>
/// <param name="What">What it is the spread of.</param>
/// <param name="Source">A citation, <c>common practice</c> or <c>from memory</c>.</param>
public sealed record SpreadRow(string Name, string What, string Source)
{
    /// <summary>One standard deviation, dB; null where the row has none.</summary>
    public double? SpreadDb { get; init; }

    /// <summary>A share, 0 to 1; null where the row has none.</summary>
    public double? Share { get; init; }

    /// <summary>A level, dBm; null where the row has none.</summary>
    public double? LevelDbm { get; init; }
}
