using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Tables;

/// <summary>
/// The words a house file may use for what things are made of and for radios. Each table gives its rows in the order of
/// its file.
/// </summary>
/// <param name="Materials">Materials by name.</param>
/// <param name="BuildUps">Floor build-ups by name.</param>
/// <param name="Radios">Radios by name.</param>
public sealed record MaterialTables(
    IReadOnlyDictionary<string, Material> Materials,
    IReadOnlyDictionary<string, FloorBuildUp> BuildUps,
    IReadOnlyDictionary<string, Radio> Radios)
{
    /// <summary>What margins mean, smallest first.</summary>
    public IReadOnlyList<MarginMeaning> Margins { get; init; } = [];

    /// <summary>How far figures may be out, row by row; empty where no such table was read.</summary>
    public IReadOnlyList<SpreadRow> SpreadRows { get; init; } = [];

    /// <summary>How far figures may be out; null where no such table was read.</summary>
    public Spreads? Spreads => SpreadRows.Count == 0 ? null : SpreadTableReader.Of(SpreadRows);

    /// <summary>Where the tables are from; null where they were not read from files.</summary>
    public TableFiles? Files { get; init; }

    /// <summary>What a margin means: the row with the largest margin that is not above it; null below the smallest.</summary>
    public MarginMeaning? MeaningOf(double marginDb) => Margins.LastOrDefault(row => row.MarginDb <= marginDb);
}
