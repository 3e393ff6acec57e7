using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Runs;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Plots.Paths;
using LinkMargin.Plots.Runs;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Texts;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Pictures;

/// <summary>The content of the picture of one link's paths, with the numbers and words of its budget.</summary>
/// <param name="loaded">The house.</param>
/// <param name="model">The model of the house.</param>
internal sealed class PathsPictures(LoadedHouse loaded, LinkModel model)
{
    /// <summary>Paths with a smaller share of the power are not drawn.</summary>
    public const double LeastShare = 0.005;

    private readonly House house = loaded.House;

    /// <summary>The content of the picture of a link.</summary>
    /// <param name="budget">The link.</param>
    /// <param name="uncertainty">The house's uncertainty.</param>
    /// <param name="runs">The cable runs of its spot, drawn on the section; null for none.</param>
    public PathsRequest RequestFor(LinkBudget budget, HouseUncertainty uncertainty, SpotRuns? runs = null)
    {
        var printed = new PrintedBudget(budget);
        int drawn = Math.Max(1, budget.Paths.Count(path => budget.ShareOf(path) >= LeastShare));
        return new PathsRequest(
            model.House, // including the people on its seats
            budget.Spot,
            budget.Seat,
            [.. budget.Paths.Take(drawn).Select((path, i) => EntryOf(budget, printed, path, i + 1))],
            Tenths.Show(printed.PathLoss),
            $"{MapFindings.Capital(budget.Spot.Name)} to {budget.Seat.Name}: {Tenths.ShowMargin(uncertainty.MarginAtConfidenceDb(budget), budget.RequiredDb)} dB to count on, "
                + $"{Headroom.Words(budget, uncertainty.AtConfidence)} the required {Tenths.ShowRequired(budget.RequiredDb)} dB",
            Caption(budget, uncertainty))
        {
            Unit = loaded.PlotUnit,
            Occupied = budget.Occupied,
            NotDrawn = NotDrawn(budget, drawn),
            Runs = runs is null ? [] : DrawnRun.Of(runs),
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
        $"{house.Name}. Margin to count on ({UncertaintyWords.Reached(uncertainty.Confidence)}): {Tenths.ShowMargin(uncertainty.MarginAtConfidenceDb(budget), budget.RequiredDb)} dB, "
            + $"{Headroom.Words(budget, uncertainty.AtConfidence)} the required {Tenths.ShowRequired(budget.RequiredDb)} dB. Median {Tenths.ShowMargin(uncertainty.With(budget).MedianDb)} dB. "
            + $"Worse of both directions, {house.Controller.Name} with {house.ConsoleAt(budget.Spot).Name}; "
            + $"model: {ModelWords.Of(model.Depth)}; "
            + (budget.Occupied.Count > 0 ? $"with people on {OccupiedWords.List(budget.Occupied)}; " : "")
            + loaded.WhatIfCaption
            + "planning estimate.";

    private static string NotDrawn(LinkBudget budget, int drawn)
    {
        int left = budget.Paths.Count - drawn;
        double share = 100 * budget.Paths.Skip(drawn).Sum(budget.ShareOf);
        return left switch
        {
            0 => "",
            1 => string.Create(CultureInfo.InvariantCulture, $"Not drawn: 1 path with {share:0.0} %."),
            _ => string.Create(
                CultureInfo.InvariantCulture,
                $"Not drawn: {left} paths with less than {100 * LeastShare:0.0} % each, {share:0.0} % together."),
        };
    }
}
