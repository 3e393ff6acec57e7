using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Plots.Charts;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Pictures;

namespace LinkMargin.Cli.Maps;

/// <summary>The table of seats and spots as a picture.</summary>
internal static class SpotsPictureFile
{
    /// <summary>Draws it and writes it.</summary>
    /// <param name="invocation">Where the command writes and where relative paths start.</param>
    /// <param name="loaded">The house.</param>
    /// <param name="ranking">Its spots, best first; at least one.</param>
    /// <param name="uncertainty">The uncertainty of its links.</param>
    /// <param name="call">How likely each spot is the best.</param>
    /// <param name="path">The file.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    public static void Write(
        Invocation invocation, LoadedHouse loaded, Ranking ranking, HouseUncertainty uncertainty, CloseCall call, string path, bool force)
    {
        SpotsRequest request = SpotsPictures.RequestOf(loaded, ranking, uncertainty, call);
        invocation.Files.Write(path, SpotsPicture.Render(request, SpotsPicture.FittingSize(request)), force);
    }
}
