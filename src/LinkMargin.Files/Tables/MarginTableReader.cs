using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>Reads the table of what margins mean.</summary>
internal static class MarginTableReader
{
    private static readonly string[] RowKeys = ["margin", "means", "source"];

    /// <summary>Reads the meanings, smallest margin first, without those that have errors.</summary>
    public static IReadOnlyList<MarginMeaning> Read(MappingReader table)
    {
        Dictionary<double, Mark> seen = [];
        List<MarginMeaning> rows = [];
        foreach (MappingReader row in TableRows.Of(table, "margins", "a margin", RowKeys))
        {
            double? margin = row.RequiredNumber("margin", Quantity.Decibels, TableLimits.Margin);
            string? means = row.RequiredText("means");
            string? source = row.RequiredText("source");
            if (margin is not { } value)
            {
                continue;
            }

            if (seen.TryGetValue(value, out Mark first))
            {
                row.Source.Error(row.MarkOf("margin"), FormattableString.Invariant(
                    $"margin: {TableLimits.Margin.Show(value)} appears twice; the first is in line {first.Line}, so change or remove one"));
                continue;
            }

            seen.Add(value, row.MarkOf("margin"));
            if (means is not null && source is not null)
            {
                rows.Add(new MarginMeaning(value, means, source));
            }
        }

        return [.. rows.OrderBy(row => row.MarginDb)];
    }
}

/// <summary>What a margin means to somebody who plays.</summary>
/// <param name="MarginDb">The margin from which on it holds, dB.</param>
/// <param name="Means">What to expect, in words.</param>
/// <param name="Source">A citation, <c>common practice</c> or <c>from memory</c>.</param>
public sealed record MarginMeaning(double MarginDb, string Means, string Source);
