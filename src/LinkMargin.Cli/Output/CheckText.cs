using LinkMargin.Files.Json;

namespace LinkMargin.Cli.Output;

/// <summary>What a house file was read as, so that a slip shows that is no mistake of form.</summary>
internal static class CheckText
{
    /// <summary>Writes it.</summary>
    public static void Write(CheckDocument check, TextWriter output, int width)
    {
        if (check.House is null)
        {
            output.WriteLine($"{check.File}: {Count(check.Mistakes, "mistake")} to mend{(check.Odd > 0 ? $", {Count(check.Odd, "odd thing")} to look at" : "")}.");
            return;
        }

        output.WriteLine($"{check.File}: no mistakes{(check.Odd > 0 ? $", {Count(check.Odd, "odd thing")} to look at" : "")}. {check.House} was read as:");
        output.WriteLine();
        var table = new TextTable(
        [
            new Column("level"),
            new Column("floor at\nm", Align.Right),
            new Column("height\nm", Align.Right),
            new Column("walls", Align.Right),
            new Column("openings", Align.Right),
            new Column("rooms, m2") { Wraps = true },
        ]);
        foreach (LevelDocument level in check.Levels)
        {
            table.Add(
                level.Name,
                Figures.Plain(Math.Round(level.ElevationM, 3)),
                Figures.Plain(Math.Round(level.HeightM, 3)),
                Figures.Plain(level.Walls),
                Figures.Plain(level.Openings),
                string.Join(", ", level.Rooms.Select(room => $"{room.Name} {Tenths.Show(room.AreaM2)}")));
        }

        table.WriteTo(output, width);
        output.WriteLine();
        WordWrap.Write($"Fixtures: {check.Fixtures}.", output, width);
        WordWrap.Write($"Spots: {Listed(check.Spots)}.", output, width);
        WordWrap.Write($"Seats: {Listed(check.Seats)}.", output, width);
        output.WriteLine($"Plan: {check.Plan}");
    }

    private static string Listed(IReadOnlyList<string> names) => names.Count == 0 ? "none" : string.Join(", ", names);

    private static string Count(int count, string what) => FormattableString.Invariant($"{count} {what}{(count == 1 ? "" : "s")}");
}
