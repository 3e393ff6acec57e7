using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Runs;
using LinkMargin.Plots.Plans;
using LinkMargin.Plots.Runs;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Words;

namespace LinkMargin.Cli.Maps;

/// <summary>The plan of a house with the new cable runs of one spot, and a section through them.</summary>
internal static class RunsPictureFile
{
    /// <summary>Draws and writes it.</summary>
    /// <param name="invocation">Where the command writes and where relative paths start.</param>
    /// <param name="loaded">The house.</param>
    /// <param name="runs">The runs of the spot.</param>
    /// <param name="path">The file.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    public static void Write(Invocation invocation, LoadedHouse loaded, SpotRuns runs, string path, bool force)
    {
        string title = $"{loaded.House.Name}, console at '{runs.Spot.Name}': {SpotCableWords.Cost(runs, loaded.Lengths)}";
        PlanRequest request = PlanRequest.OfAllLevels(
            loaded.House, title, RunWords.Caution) with
        {
            Unit = loaded.PlotUnit,
            Runs = DrawnRun.Of(runs),
            Cut = RunsCut.Of(runs),
        };
        byte[] png = PlanPicture.Render(request, PlanPicture.FittingSize(request));
        invocation.Files.Write(path, png, force);
    }
}
