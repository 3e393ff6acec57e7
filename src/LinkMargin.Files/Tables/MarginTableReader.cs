using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>Reads the table of what margins mean.</summary>
internal static class MarginTableReader
{
    /// <summary>The key of the bands, which are optional.</summary>
    public const string BandsKey = "bands";

    private static readonly string[] RowKeys = ["margin", "means", "source"], BandKeys = ["probability", "means", "source"];

    /// <summary>Reads the valid rows, smallest margin first.</summary>
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

    /// <summary>Reads the valid bands, lowest first; null if the table has none.</summary>
    public static IReadOnlyList<PassingBand>? ReadBands(MappingReader table)
    {
        if (!table.Has(BandsKey))
        {
            return null;
        }

        Dictionary<double, Mark> seen = [];
        List<PassingBand> bands = [];
        foreach (MappingReader row in TableRows.Of(table, BandsKey, "a band", BandKeys))
        {
            double? probability = row.RequiredNumber("probability", Quantity.Plain, TableLimits.Probability);
            string? means = row.RequiredText("means");
            string? source = row.RequiredText("source");
            if (probability is not { } least)
            {
                continue;
            }

            if (seen.TryGetValue(least, out Mark first))
            {
                row.Source.Error(row.MarkOf("probability"), FormattableString.Invariant(
                    $"probability: {TableLimits.Probability.Show(least)} appears twice; the first is in line {first.Line}, so change or remove one"));
                continue;
            }

            seen.Add(least, row.MarkOf("probability"));
            if (means is not null && source is not null)
            {
                bands.Add(new PassingBand(least, means, source));
            }
        }

        if (bands.Count > 0 && !seen.ContainsKey(0))
        {
            table.Source.Error(table.MarkOf(BandsKey), $"{BandsKey}: no band starts at 0, so a seat could fall outside all bands; add one");
        }

        return [.. bands.OrderBy(band => band.LeastProbability)];
    }
}

/// <summary>What a probability of passing means to a person who does not know decibels.</summary>
/// <param name="LeastProbability">The lowest probability in the band, 0 to 1.</param>
/// <param name="Means">What to expect, in words.</param>
/// <param name="Source">A citation, <c>common practice</c> or a judgement.</param>
public sealed record PassingBand(double LeastProbability, string Means, string Source);

/// <summary>What a margin means to a player.</summary>
/// <param name="MarginDb">The lowest margin that it holds for, dB.</param>
/// <param name="Means">What to expect, in words.</param>
/// <param name="Source">A citation, <c>common practice</c> or <c>from memory</c>.</param>
public sealed record MarginMeaning(double MarginDb, string Means, string Source);
