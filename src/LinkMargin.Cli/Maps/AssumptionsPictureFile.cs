using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Sensitivity;
using LinkMargin.Plots.Charts;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Pictures;

namespace LinkMargin.Cli.Maps;

/// <summary>The picture of the assumptions a margin depends on.</summary>
internal static class AssumptionsPictureFile
{
    /// <summary>Draws it and writes it.</summary>
    /// <param name="invocation">Where the command writes and where relative paths start.</param>
    /// <param name="loaded">The house.</param>
    /// <param name="study">What was recomputed.</param>
    /// <param name="link">The link it is about.</param>
    /// <param name="path">The file.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    public static void Write(Invocation invocation, LoadedHouse loaded, SensitivityStudy study, LinkBudget link, string path, bool force)
    {
        AssumptionsRequest request = new AssumptionsPictures(loaded, study).RequestFor(link);
        invocation.Files.Write(path, AssumptionsPicture.Render(request, AssumptionsPicture.FittingSize(request)), force);
    }
}
