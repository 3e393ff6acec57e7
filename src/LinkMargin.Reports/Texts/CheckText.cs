using LinkMargin.Files.Json;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Texts;

/// <summary>Writes what a house file contains, so that a mistake that is not a formal error is noticed.</summary>
internal static class CheckText
{
    /// <summary>Writes the summary.</summary>
    /// <param name="check">The result of the check.</param>
    /// <param name="lengths">How lengths are written.</param>
    /// <param name="output">Where to write.</param>
    /// <param name="width">The greatest width.</param>
    public static void Write(CheckDocument check, LengthFormat lengths, TextWriter output, int width)
    {
        if (check.House is null)
        {
            WordWrap.Write($"{Quote.Line(check.File)}: {Count(check.Errors, "error")}{(check.Warnings > 0 ? $", {Count(check.Warnings, "warning")}" : "")}.", output, width);
            return;
        }

        WordWrap.Write($"{Quote.Line(check.File)}: no errors{(check.Warnings > 0 ? $", {Count(check.Warnings, "warning")}" : "")}. {check.House} contains:", output, width);
        output.WriteLine();
        var table = new TextTable(
        [
            new Column("level"),
            new Column("floor at", Align.Right),
            new Column("height", Align.Right),
            new Column("walls", Align.Right),
            new Column("openings", Align.Right),
            new Column($"rooms, {lengths.AreaUnit}") { Wraps = true },
        ]);
        foreach (LevelDocument level in check.Levels)
        {
            table.Add(
                level.Name,
                lengths.Brief(level.ElevationM),
                lengths.Brief(level.HeightM),
                Figures.Plain(level.Walls),
                Figures.Plain(level.Openings),
                string.Join(", ", level.Rooms.Select(room => $"{room.Name} {lengths.Area(room.AreaM2)}")));
        }

        table.WriteTo(output, width);
        output.WriteLine();
        WordWrap.Write($"Fixtures: {check.Fixtures}.", output, width);
        WordWrap.Write($"Spots: {Listed(check.Spots)}.", output, width);
        WordWrap.Write($"Seats: {Listed(check.Seats)}.", output, width);
        if (check.Zones.Count + check.KeepOuts.Count > 0)
        {
            WordWrap.Write($"Zones: {Listed(check.Zones)}. Keep-outs: {Listed(check.KeepOuts)}.", output, width);
        }

        WordWrap.Write($"Plan: {Quote.Line(check.Plan ?? "")}", output, width);
    }

    private static string Listed(IReadOnlyList<string> names) => names.Count == 0 ? "none" : string.Join(", ", names);

    private static string Count(int count, string what) => FormattableString.Invariant($"{count} {what}{(count == 1 ? "" : "s")}");
}
