using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Runs;
using LinkMargin.Plots.Plans;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Maps;

/// <summary>The plan of a house with the new cable runs of one spot.</summary>
internal static class RunsPictureFile
{
    /// <summary>Draws and writes it.</summary>
    /// <param name="invocation">Where the command stands.</param>
    /// <param name="loaded">The house.</param>
    /// <param name="runs">The runs of the spot.</param>
    /// <param name="path">The file.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    public static void Write(Invocation invocation, LoadedHouse loaded, SpotRuns runs, string path, bool force)
    {
        string title = FormattableString.Invariant(
            $"{loaded.House.Name}, console at '{runs.Spot.Name}': {runs.NewRuns} new run{(runs.NewRuns == 1 ? "" : "s")}, {loaded.Lengths.Brief(runs.BuyMetres)} to buy, {runs.Holes} hole{(runs.Holes == 1 ? "" : "s")} to bore");
        PlanRequest request = PlanRequest.OfAllLevels(
            loaded.House, title, "Routes follow the walls and floors of the house file; what is hidden in them is not known. Local codes decide about every hole.") with
        {
            Unit = loaded.PlotUnit,
            Runs = [.. runs.Runs.Select((run, i) => (run, i)).Where(pair => pair.run.Route is not null).Select(pair => new DrawnRun(pair.i + 1, pair.run.Route!))],
        };
        byte[] png = PlanPicture.Render(request, PlanPicture.FittingSize(request));
        invocation.Files.Write(path, png, force);
    }
}
