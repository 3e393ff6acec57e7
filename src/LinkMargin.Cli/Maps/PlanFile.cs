using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Plans;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Maps;

/// <summary>The drawing of a house, so that a mistyped wall is seen.</summary>
internal static class PlanFile
{
    /// <summary>Draws and writes it.</summary>
    /// <param name="invocation">Where the command stands.</param>
    /// <param name="loaded">The house.</param>
    /// <param name="path">The file.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    public static void Write(Invocation invocation, LoadedHouse loaded, string path, bool force)
    {
        House house = loaded.House;
        PlanRequest request = PlanRequest.OfAllLevels(
            house, $"Plan of {house.Name}", Caption(loaded)) with
        {
            Unit = loaded.PlotUnit,
        };
        byte[] png = PlanPicture.Render(request, PlanPicture.FittingSize(request));
        invocation.Files.Write(path, png, force);
    }

    private static string Caption(LoadedHouse loaded) => loaded.WhatIf.Count > 0
        ? $"As the house file describes it, with these changes: {string.Join(", ", loaded.WhatIf)}."
        : "As the house file describes it. Compare it with the house before you rely on any figure.";
}
