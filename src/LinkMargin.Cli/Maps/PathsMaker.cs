using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Runs;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Json;
using LinkMargin.Plots.Paths;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Pictures;

namespace LinkMargin.Cli.Maps;

/// <summary>Draws the paths of one link on the plan and on a section, with the numbers and words that explain prints.</summary>
/// <param name="invocation">Where the command writes and where relative paths start.</param>
/// <param name="loaded">The house.</param>
/// <param name="model">The house, ready.</param>
/// <param name="confidence">Share of cases in which the margin to count on is reached, above 0 and below 1.</param>
internal sealed class PathsMaker(Invocation invocation, LoadedHouse loaded, LinkModel model, double confidence)
{
    private readonly House house = loaded.House;

    /// <summary>Draws and writes the picture of a link.</summary>
    /// <param name="spot">Where the console stands.</param>
    /// <param name="seat">Where the player sits.</param>
    /// <param name="folder">Where the file goes, as typed.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    public PathsDocument Make(Spot spot, Seat seat, string folder, bool force)
    {
        invocation.Files.MakeFolder(folder);
        LinkBudget budget = LinkEvaluation.Budget(model, spot, seat);
        var uncertainty = HouseUncertainty.Of(model, [spot], [seat], loaded.Uncertainty, confidence);
        PathsRequest request = new PathsPictures(loaded, model).RequestFor(budget, uncertainty, RunPlanner.Of(house, spot));
        byte[] png = PathsPicture.Render(request, PathsPicture.FittingSize(request));
        string path = Path.Combine(folder, $"{FileNames.Stem("paths", spot.Name, "to", seat.Name)}.png");
        invocation.Files.Write(path, png, force);
        return new PathsDocument(
            house.Name,
            spot.Name,
            seat.Name,
            [.. budget.Occupied.Select(other => other.Name)],
            path,
            request.Paths.Count,
            budget.Paths.Count - request.Paths.Count,
            budget.Paths.Skip(request.Paths.Count).Sum(budget.ShareOf))
        {
            MedianDb = uncertainty.With(budget).MedianDb,
            MarginAtConfidenceDb = uncertainty.MarginAtConfidenceDb(budget),
            Confidence = uncertainty.Confidence,
            RequiredDb = budget.RequiredDb,
            Passes = uncertainty.AtConfidence.Passes(budget),
            WhatIf = loaded.WhatIfOrNone,
            FittedToMeasurements = loaded.FittedToMeasurements,
        };
    }
}
