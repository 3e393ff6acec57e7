using LinkMargin.Engine.Houses;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Texts;

/// <summary>The tables in use, one line for each row, with its source.</summary>
/// <param name="tables">The tables.</param>
internal sealed class TablesText(MaterialTables tables)
{
    /// <summary>Writes all rows, table by table.</summary>
    public void Write(TextWriter output, int width)
    {
        (string What, string? File, int Rows, Func<TextTable> Table)[] all =
        [
            ("Materials: median loss at 2.4 GHz, head-on", tables.Files?.Materials, tables.Materials.Count, Materials),
            ("Floor build-ups, from the walking surface down", tables.Files?.BuildUps, tables.BuildUps.Count, Floors),
            ("Radios", tables.Files?.Radios, tables.Radios.Count, Radios),
            ("What a margin means", tables.Files?.Margins, tables.Margins.Count, Margins),
            ("What a probability that a seat passes means", tables.Files?.Margins, tables.Bands.Count, Bands),
            ("Spreads (one standard deviation), apart from the spread of each row", tables.Files?.Spreads, tables.SpreadRows.Count, Spreads),
        ];
        bool isFirst = true;
        foreach ((string what, string? file, _, Func<TextTable> table) in all.Where(one => one.Rows > 0))
        {
            if (!isFirst)
            {
                output.WriteLine();
            }

            isFirst = false;
            Heading(output, width, what, file);
            table().WriteTo(output, width);
        }
    }

    private TextTable Materials()
    {
        var table = new TextTable(
        [
            new("name"), new("loss\ndB", Align.Right), new("spread\ndB", Align.Right), new("thickness\nmm", Align.Right),
            new("description and source") { Wraps = true },
        ]);
        foreach (Material row in tables.Materials.Values)
        {
            table.Add(
                row.Name, Figures.Plain(row.LossDb), Figures.Plain(row.SpreadDb), Figures.Millimetres(row.ThicknessMetres), WithSource(row.Description, row.Source));
        }

        return table;
    }

    private TextTable Floors()
    {
        var table = new TextTable([new("name"), new("thickness\nmm", Align.Right), new("description and source") { Wraps = true }]);
        foreach (FloorBuildUp row in tables.BuildUps.Values)
        {
            table.Add(row.Name, Figures.Millimetres(row.ThicknessMetres), WithSource(row.Description, row.Source));
        }

        return table;
    }

    private TextTable Radios()
    {
        var table = new TextTable(
        [
            new("name"), new("transmit\ndBm", Align.Right), new("gain\ndBi", Align.Right), new("sensi-\ntivity\ndBm", Align.Right),
            new("grip\ndB", Align.Right), new("spread\ndB", Align.Right), new("description and source") { Wraps = true },
        ]);
        foreach (Radio row in tables.Radios.Values)
        {
            table.Add(
                row.Name,
                Figures.Plain(row.TransmitPower.Dbm),
                Figures.Plain(row.AntennaGainDb),
                Figures.Plain(row.Sensitivity.Dbm),
                Figures.Plain(row.HandAndBodyDb),
                Figures.Plain(row.SpreadDb),
                WithSource(row.GainIncludesMismatch ? $"{row.Description}; the gain includes the polarisation mismatch" : row.Description, row.Source));
        }

        return table;
    }

    private TextTable Margins()
    {
        var table = new TextTable([new("from dB", Align.Right), new("meaning and source") { Wraps = true }]);
        foreach (MarginMeaning row in tables.Margins)
        {
            table.Add(Figures.Plain(row.MarginDb), WithSource(row.Means, row.Source));
        }

        return table;
    }

    private TextTable Bands()
    {
        var table = new TextTable([new("from %", Align.Right), new("meaning and source") { Wraps = true }]);
        foreach (PassingBand row in tables.Bands)
        {
            table.Add(Figures.Plain(100 * row.LeastProbability), WithSource(row.Means, row.Source));
        }

        return table;
    }

    private TextTable Spreads()
    {
        var table = new TextTable(
        [
            new("name"), new("spread\ndB", Align.Right), new("share", Align.Right), new("level\ndBm", Align.Right),
            new("what varies, and source") { Wraps = true },
        ]);
        foreach (SpreadRow row in tables.SpreadRows)
        {
            table.Add(row.Name, Shown(row.SpreadDb), Shown(row.Share), Shown(row.LevelDbm), WithSource(row.What, row.Source));
        }

        return table;
    }

    private static string Shown(double? figure) => figure is { } value ? Figures.Plain(value) : "";

    // Below one another both have enough space; side by side each would be a column of single words.
    private static string WithSource(string what, string source) => $"{what}\n- {source}";

    private static void Heading(TextWriter output, int width, string what, string? file)
    {
        WordWrap.Write(file is null ? what : $"{what}; {file}", output, width);
        output.WriteLine();
    }
}
