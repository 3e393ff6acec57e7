using System.Globalization;
using LinkMargin.Cli.Commands;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Options;
using LinkMargin.Cli.Output;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Json;
using LinkMargin.Plots.Paths;

namespace LinkMargin.Cli.Maps;

/// <summary>Draws the paths of one link over the plan, with the numbers and words that explain prints.</summary>
/// <param name="invocation">Where the command stands.</param>
/// <param name="loaded">The house.</param>
/// <param name="model">The house, ready.</param>
/// <param name="confidence">How often a margin that is counted on is exceeded, above 0 and below 1.</param>
internal sealed class PathsMaker(Invocation invocation, LoadedHouse loaded, LinkModel model, double confidence)
{
    /// <summary>Paths with a smaller share of the power are left out of the picture.</summary>
    public const double LeastShare = 0.005;

    private readonly House house = loaded.House;

    /// <summary>Draws and writes the picture of a link.</summary>
    /// <param name="spot">Where the console stands.</param>
    /// <param name="seat">Where the player sits.</param>
    /// <param name="folder">Where the file goes, as it was typed.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    public PathsDocument Make(Spot spot, Seat seat, string folder, bool force)
    {
        invocation.Files.MakeFolder(folder);
        LinkBudget budget = LinkEvaluation.Budget(model, spot, seat);
        var uncertainty = HouseUncertainty.Of(model, [spot], [seat], loaded.Uncertainty, confidence);
        PathsRequest request = RequestFor(budget, uncertainty);
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

    /// <summary>What the picture of a link shows.</summary>
    internal PathsRequest RequestFor(LinkBudget budget, HouseUncertainty uncertainty)
    {
        var printed = new PrintedBudget(budget);
        int drawn = Math.Max(1, budget.Paths.Count(path => budget.ShareOf(path) >= LeastShare));
        return new PathsRequest(
            model.House, // with the people on its seats
            budget.Spot,
            budget.Seat,
            [.. budget.Paths.Take(drawn).Select((path, i) => EntryOf(budget, printed, path, i + 1))],
            Tenths.Show(printed.PathLoss),
            $"{house.Name}: the ways from '{budget.Spot.Name}' to '{budget.Seat.Name}'",
            Caption(budget, uncertainty))
        {
            Unit = loaded.PlotUnit,
            Occupied = budget.Occupied,
            LeftOut = LeftOut(budget, drawn),
        };
    }

    private PathEntry EntryOf(LinkBudget budget, PrintedBudget printed, PathBudget path, int number) => new(
        number,
        path,
        budget.ShareOf(path),
        PathWords.Of(path, house, budget.Seat),
        path.Path.Kind == PathKind.Diffuse ? "" : loaded.Lengths.Brief(path.Path.LengthMetres),
        Tenths.Show(printed.LossOf(path)),
        PathWords.ShareOf(budget, path));

    private string Caption(LinkBudget budget, HouseUncertainty uncertainty) =>
        $"Margin to count on {Tenths.ShowMargin(uncertainty.MarginAtConfidenceDb(budget), budget.RequiredDb)} dB ({UncertaintyWords.Often(uncertainty.Confidence)} there is as much), "
            + $"{Headroom.Words(budget, uncertainty.AtConfidence)} the {Tenths.ShowRequired(budget.RequiredDb)} dB that '{budget.Seat.Name}' requires; median {Tenths.ShowMargin(uncertainty.With(budget).MedianDb)} dB. "
            + $"The worse of both directions, for {house.Controller.Name} with {house.Console.Name}; "
            + $"{ModelOption.InWords(model.Depth)}; "
            + (budget.Occupied.Count > 0 ? $"with people on {OccupiedWords.List(budget.Occupied)}; " : "")
            + loaded.WhatIfCaption
            + "an estimate for planning.";

    private static string LeftOut(LinkBudget budget, int drawn)
    {
        int left = budget.Paths.Count - drawn;
        double share = 100 * budget.Paths.Skip(drawn).Sum(budget.ShareOf);
        return left switch
        {
            0 => "",
            1 => string.Create(CultureInfo.InvariantCulture, $"Left out: 1 more way with {share:0.0} %."),
            _ => string.Create(
                CultureInfo.InvariantCulture,
                $"Left out: {left} more ways with less than {100 * LeastShare:0.0} % each, {share:0.0} % together."),
        };
    }
}
