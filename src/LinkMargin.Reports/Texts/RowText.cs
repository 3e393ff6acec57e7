using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Propagation;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Texts;

/// <summary>One row of a table in full.</summary>
internal static class RowText
{
    private const int LabelWidth = 15;

    /// <summary>Writes a material.</summary>
    public static void Write(Material row, TextWriter output, int width)
    {
        string thickness = row.ThicknessMetres is { } metres ? $", {Figures.Millimetres(metres)} mm thick" : "";
        string angle = row.Angle == LossAngle.Mean ? "mean over angles" : "head-on";
        string form = row.Form == LossForm.Bulk
            ? "bulk: the loss grows with the length inside"
            : "sheet: the loss applies to one crossing";
        Write(output, width, $"material {row.Name}",
        [
            ("what", row.Description),
            ("loss", $"{Figures.Plain(row.LossDb)} dB at 2.4 GHz, {angle}{thickness}"),
            ("spread", $"{Figures.Plain(row.SpreadDb)} dB, one standard deviation between examples"),
            ("form", form),
            .. Reflection(row.Reflects),
            .. row.Layers.Select((layer, i) => (i == 0 ? "layers" : "", $"{Figures.Millimetres(layer.ThicknessMetres)} mm {layer.SubstanceName}")),
            .. Members("studs", row.Ribs),
            ("source", row.Source),
        ]);
    }

    /// <summary>Writes a floor build-up.</summary>
    public static void Write(FloorBuildUp row, TextWriter output, int width) =>
        Write(output, width, $"floor {row.Name}",
        [
            ("what", row.Description),
            ("thickness", $"{Figures.Millimetres(row.ThicknessMetres)} mm"),
            .. row.Layers.SelectMany((layer, i) => Layer(i == 0 ? "layers" : "", layer)),
            ("source", row.Source),
        ]);

    /// <summary>Writes a radio.</summary>
    public static void Write(Radio row, TextWriter output, int width) =>
        Write(output, width, $"radio {row.Name}",
        [
            ("what", row.Description),
            ("transmit", $"{Figures.Plain(row.TransmitPower.Dbm)} dBm into its antenna"),
            ("gain", $"{Figures.Plain(row.AntennaGainDb)} dBi, mean over directions"),
            ("polarisation", row.GainIncludesMismatch
                ? "the gain is for one polarisation: it includes the mismatch"
                : $"the gain counts both polarisations: a link loses {Figures.Plain(Math.Round(PolarisationMismatch.MeanDb, 1))} dB by the mismatch"),
            ("sensitivity", $"{Figures.Plain(row.Sensitivity.Dbm)} dBm"),
            ("grip", $"{Figures.Plain(row.HandAndBodyDb)} dB for the hand and the body behind it"),
            ("spread", $"{Figures.Plain(row.SpreadDb)} dB, one standard deviation between units and grips"),
            ("source", row.Source),
        ]);

    private static IEnumerable<(string Label, string Text)> Reflection(SheetReflection? reflects) => reflects is null
        ? []
        : [("reflects", reflects == SheetReflection.Metal ? "like metal: most of what does not pass through" : "like board: little")];

    private static IEnumerable<(string Label, string Text)> Layer(string label, FloorLayer layer) =>
    [
        (label, layer.Material is { } material
            ? $"{Figures.Millimetres(layer.ThicknessMetres)} mm {material.Name}, {Figures.Plain(material.LossDb)} dB"
            : $"{Figures.Millimetres(layer.ThicknessMetres)} mm air"),
        .. Members("", layer.Joists),
    ];

    private static IEnumerable<(string Label, string Text)> Members(string label, Ribs? ribs) => ribs is null
        ? []
        : [(label, $"{ribs.Material.Name} members, {Figures.Millimetres(ribs.WidthMetres)} x {Figures.Millimetres(ribs.DepthMetres)} mm "
            + $"every {Figures.Millimetres(ribs.SpacingMetres)} mm, {Figures.Plain(ribs.Material.LossDb)} dB each")];

    private static void Write(TextWriter output, int width, string title, IEnumerable<(string Label, string Text)> lines)
    {
        WordWrap.Write(title, output, width);
        foreach ((string label, string text) in lines)
        {
            string before = $"  {label}".PadRight(LabelWidth);
            foreach (string line in WordWrap.Lines(text, width - LabelWidth, cutsWords: true))
            {
                output.WriteLine($"{before}{line}".TrimEnd());
                before = new string(' ', LabelWidth);
            }
        }
    }
}

/// <summary>The rows of the tables: an overview by kind, and those that match a word.</summary>
internal static class RowsText
{
    /// <summary>Writes how many rows of each kind there are, and their names.</summary>
    public static void WriteOverview(IReadOnlyList<RowKind> kinds, TextWriter output, int width)
    {
        var table = new TextTable([new Column("kind"), new Column("rows", Align.Right), new Column("names") { Wraps = true }]);
        foreach (RowKind kind in kinds)
        {
            table.Add(kind.Name, kind.Count.ToString(CultureInfo.InvariantCulture), string.Join(", ", kind.Names));
        }

        table.WriteTo(output, width);
        output.WriteLine();
        WordWrap.Write("'linkmargin materials KIND' lists the rows of a kind, 'linkmargin materials NAME' shows one row in full, any other word "
            + "(such as siding) searches, and --all lists everything.", output, width);
    }

    /// <summary>Writes the rows found for a word.</summary>
    public static void WriteFound(string word, IReadOnlyList<FoundRow> rows, TextWriter output, int width)
    {
        WordWrap.Write(rows.Count == 1
            ? $"No row is named '{word}'. One matches:"
            : FormattableString.Invariant($"No row is named '{word}'. {rows.Count} match, best first:"), output, width);
        output.WriteLine();
        var table = new TextTable([new Column("name"), new Column("kind"), new Column("description") { Wraps = true }]);
        foreach (FoundRow row in rows)
        {
            table.Add(row.Name, row.Kind, row.What);
        }

        table.WriteTo(output, width);
        output.WriteLine();
        WordWrap.Write($"'linkmargin materials {rows[0].Name}' shows the first in full.", output, width);
    }
}
