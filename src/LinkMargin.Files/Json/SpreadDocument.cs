using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Json;

/// <summary>One row of the table of spreads, as JSON.</summary>
/// <param name="Name">What the program calls it.</param>
/// <param name="What">What it is the spread of.</param>
/// <param name="SpreadDb">One standard deviation, dB; left out where the row has none.</param>
/// <param name="Share">A share, 0 to 1; left out where the row has none.</param>
/// <param name="LevelDbm">A level, dBm; left out where the row has none.</param>
/// <param name="Source">Where the figures are from.</param>
public sealed record SpreadDocument(string Name, string What, double? SpreadDb, double? Share, double? LevelDbm, string Source)
{
    internal static SpreadDocument From(SpreadRow row) => new(row.Name, row.What, row.SpreadDb, row.Share, row.LevelDbm, row.Source);
}
