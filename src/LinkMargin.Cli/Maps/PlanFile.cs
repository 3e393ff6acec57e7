using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Plans;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Maps;

/// <summary>The drawing of a house, which shows a mistyped wall.</summary>
internal static class PlanFile
{
    /// <summary>Draws and writes it.</summary>
    /// <param name="invocation">Where the command writes and where relative paths start.</param>
    /// <param name="loaded">The house.</param>
    /// <param name="path">The file.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    /// <param name="warnings">How many warnings the house file has.</param>
    public static void Write(Invocation invocation, LoadedHouse loaded, string path, bool force, int warnings)
    {
        House house = loaded.House;
        PlanRequest request = PlanRequest.OfAllLevels(
            house, Title(house, warnings), Caption(loaded)) with
        {
            Unit = loaded.PlotUnit,
        };
        byte[] png = PlanPicture.Render(request, PlanPicture.FittingSize(request));
        invocation.Files.Write(path, png, force);
    }

    // The counts of what was read, so that a missing level, room or seat is noticed.
    private static string Title(House house, int warnings)
    {
        string[] counts =
        [
            Count(house.Levels.Count, "level"),
            Count(house.Levels.Sum(level => level.Rooms.Count), "room"),
            Count(house.Spots.Count, "spot"),
            Count(house.Seats.Count, "seat"),
            warnings == 0 ? "no warnings" : Count(warnings, "warning"),
        ];
        return $"{house.Name}: {string.Join(", ", counts)}";

        static string Count(int number, string what) => FormattableString.Invariant($"{number} {what}{(number == 1 ? "" : "s")}");
    }

    private static string Caption(LoadedHouse loaded) => loaded.WhatIf.Count > 0
        ? $"As the house file describes it, but {loaded.WhatIfWords}."
        : "As the house file describes it. Compare it with the house before you rely on any figure.";
}
