using System.Globalization;
using LinkMargin.Files.Json;
using LinkMargin.Files.Quantities;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Texts;

/// <summary>The maps that were written, with the share of each level that has the required margin.</summary>
internal static class MapsText
{
    /// <summary>Writes the list.</summary>
    public static void Write(MapsDocument maps, LengthFormat lengths, TextWriter output, int width)
    {
        WordWrap.Write(
            $"Maps of {maps.House}: cells of {lengths.Brief(maps.CellM)}, hands {lengths.Brief(maps.HandsM)} above the floor. "
                + $"Share: part of the floor where the margin to count on ({UncertaintyWords.Reached(maps.Confidence)}) reaches {Tenths.ShowRequired(maps.RequiredDb)} dB; lowest: lowest margin to count on.",
            output,
            width);
        output.WriteLine();
        var table = new TextTable(
        [
            new Column("spot") { Wraps = true },
            new Column("on level"),
            new Column("share", Align.Right),
            new Column("lowest\ndB", Align.Right),
            new Column("file") { Whole = true },
        ]);
        foreach (MapDocument map in maps.Maps)
        {
            table.Add(
                map.Spot,
                map.Level,
                map.SharePassing is { } share ? string.Create(CultureInfo.InvariantCulture, $"{100 * share:0} %") : "no room",
                map.LowestMarginAtConfidenceDb is { } least ? Tenths.ShowMargin(least, maps.RequiredDb) : "",
                string.Join('\n', new[] { map.Picture, map.Csv, map.Geojson }.Where(file => file is not null)));
        }

        table.WriteTo(output, width);
        if (maps.Sheet is { } sheet)
        {
            output.WriteLine();
            WordWrap.Write($"All maps side by side, in one colour range: {sheet}", output, width);
        }
    }
}
