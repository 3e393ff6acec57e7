using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>Reads the table of spreads, which has a fixed set of rows: each must be there, with its own figures.</summary>
internal static class SpreadTableReader
{
    private const string Model = "model", Crossing = "crossing", Measurement = "measurement", BadMeasurement = "bad-measurement", Device = "device";

    private static readonly string[] RowKeys = ["name", "what", "spread", "share", "level", "source"];

    // Names in older tables, which are still read.
    private static readonly Dictionary<string, string> Former = new() { ["reading"] = Measurement, ["bad-reading"] = BadMeasurement };

    /// <summary>The rows, and the figures of each.</summary>
    private static readonly Dictionary<string, string[]> Figures = new()
    {
        [Model] = ["spread"],
        [Crossing] = ["share"],
        [Measurement] = ["spread"],
        [BadMeasurement] = ["share", "spread"],
        [Device] = ["level", "spread"],
    };

    /// <summary>Reads the valid rows in order.</summary>
    public static IReadOnlyList<SpreadRow> Read(MappingReader table)
    {
        RowNames names = new();
        List<SpreadRow> rows = [];
        foreach (MappingReader row in TableRows.Of(table, "spreads", "a spread", RowKeys))
        {
            if (Read(row, names) is { } read)
            {
                rows.Add(read);
            }
        }

        string[] missing = [.. Figures.Keys.Except(names.Met.Select(Current))];
        if (missing.Length > 0 && table.Has("spreads") && table.Optional("spreads") is SequenceNode)
        {
            table.Source.Error(table.MarkOf("spreads"), $"spreads: these rows are missing: {string.Join(", ", missing)}; copy them from the built-in file, then change them");
        }

        return rows;
    }

    /// <summary>The figures of a table without errors.</summary>
    public static Spreads Of(IReadOnlyList<SpreadRow> rows)
    {
        SpreadRow Row(string name) => rows.First(row => row.Name == name);
        SpreadRow bad = Row(BadMeasurement), device = Row(Device);
        return new Spreads(
            Row(Model).SpreadDb!.Value,
            Row(Crossing).Share!.Value,
            Row(Measurement).SpreadDb!.Value,
            bad.Share!.Value,
            bad.SpreadDb!.Value,
            device.LevelDbm!.Value,
            device.SpreadDb!.Value);
    }

    private static string Current(string name) => Former.GetValueOrDefault(name, name);

    private static SpreadRow? Read(MappingReader row, RowNames names)
    {
        int before = row.Source.Problems.Count;
        string? name = names.Read(row) is { } written ? Current(written) : null;
        string? what = row.RequiredText("what");
        string? source = row.RequiredText("source");
        double? spread = row.OptionalNumber("spread", Quantity.Decibels, name == Model ? TableLimits.Spread : TableLimits.MeasurementSpread);
        double? share = row.OptionalNumber("share", Quantity.Plain, TableLimits.Share);
        double? level = row.OptionalNumber("level", Quantity.LevelDbm, TableLimits.Transmit);
        if (name is not null && !Figures.ContainsKey(name))
        {
            row.Source.Error(row.MarkOf("name"), $"name: {Quote.Of(name)} is not a known spread; {NearestWord.Advice(name, Figures.Keys)}");
        }
        else if (name is not null)
        {
            CheckFigures(row, name);
        }

        return row.Source.Problems.Count > before || name is null || what is null || source is null
            ? null
            : new SpreadRow(name, what, source) { SpreadDb = spread, Share = share, LevelDbm = level };
    }

    private static void CheckFigures(MappingReader row, string name)
    {
        foreach (string key in (string[])["spread", "share", "level"])
        {
            bool wanted = Figures[name].Contains(key);
            if (wanted && !row.Has(key))
            {
                row.Source.Error(row.Mark, $"the row '{name}' needs the key '{key}'");
            }
            else if (!wanted && row.Has(key))
            {
                row.Source.Error(row.MarkOf(key), $"{key}: the row '{name}' has no such figure; remove it");
            }
        }
    }
}

/// <summary>One row of the table of spreads. The figures it has depend on what it describes.</summary>
/// <param name="Name">Its name in the program.</param>
/// <param name="What">What it is the spread of.</param>
/// <param name="Source">A citation, <c>common practice</c> or <c>from memory</c>.</param>
public sealed record SpreadRow(string Name, string What, string Source)
{
    /// <summary>One standard deviation, dB; null if the row has none.</summary>
    public double? SpreadDb { get; init; }

    /// <summary>A share, 0 to 1; null if the row has none.</summary>
    public double? Share { get; init; }

    /// <summary>A level, dBm; null if the row has none.</summary>
    public double? LevelDbm { get; init; }
}
