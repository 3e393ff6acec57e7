using LinkMargin.Engine.Houses;

namespace LinkMargin.Cli.Output;

/// <summary>One row of a table in full.</summary>
internal static class RowText
{
    private const int LabelWidth = 12;

    /// <summary>Writes a material.</summary>
    public static void Write(Material row, TextWriter output, int width)
    {
        string thickness = row.ThicknessMetres is { } metres ? $", {Figures.Millimetres(metres)} mm thick" : "";
        string form = row.Form == LossForm.Bulk
            ? "bulk: the loss grows with the length travelled inside"
            : "sheet: the loss is that of the whole thing, however it is crossed";
        Write(output, width, $"material {row.Name}",
        [
            ("what", row.Description),
            ("loss", $"{Figures.Plain(row.LossDb)} dB at 2.4 GHz, head on{thickness}"),
            ("spread", $"{Figures.Plain(row.SpreadDb)} dB, one standard deviation between examples"),
            ("form", form),
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
            ("transmits", $"{Figures.Plain(row.TransmitPower.Dbm)} dBm into its antenna"),
            ("gain", $"{Figures.Plain(row.AntennaGainDb)} dBi, mean over directions"),
            ("needs", $"{Figures.Plain(row.Sensitivity.Dbm)} dBm to receive"),
            ("hand", $"{Figures.Plain(row.HandAndBodyDb)} dB for the grip and the body behind it"),
            ("spread", $"{Figures.Plain(row.SpreadDb)} dB, one standard deviation between units and ways of holding"),
            ("source", row.Source),
        ]);

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
