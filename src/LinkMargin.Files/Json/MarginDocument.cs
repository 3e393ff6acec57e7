using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Json;

/// <summary>One row of the margin table, as JSON.</summary>
/// <param name="MarginDb">The margin from which on it holds, dB.</param>
/// <param name="Means">What to expect.</param>
/// <param name="Source">Where that is from.</param>
public sealed record MarginDocument(double MarginDb, string Means, string Source)
{
    internal static MarginDocument From(MarginMeaning row) => new(row.MarginDb, row.Means, row.Source);
}
