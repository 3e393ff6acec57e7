using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Links;
using LinkMargin.Plots.Maps;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Pictures;

/// <summary>The content of the map of the choice; the numbers at its marks are those of the table.</summary>
/// <param name="loaded">The house.</param>
/// <param name="model">The model of the house.</param>
/// <param name="confidence">Share of cases in which the margin to count on is reached, above 0 and below 1.</param>
internal sealed class ChoicePictures(LoadedHouse loaded, LinkModel model, double confidence)
{
    /// <summary>The content of the picture.</summary>
    public ChoiceRequest RequestFor(PlaceResult result, Ranking named, IReadOnlyList<Field> fields, bool isEverywhere) => new(
        isEverywhere ? model.House with { Zones = [] } : model.House,
        fields,
        [
            .. result.Best.Select(placed => new ChoiceMark(
                placed.Place.LevelIndex, placed.Place.Plan, placed.Score.Spot.Name, Tenths.Signed(Headroom.TenthsOf(placed.Score)), IsNamed: false)),
            .. named.Scores.Select(score => new ChoiceMark(
                score.Spot.LevelIndex, score.Spot.Plan, score.Spot.Name, Tenths.Signed(Headroom.TenthsOf(score)), IsNamed: true)),
        ],
        $"{loaded.House.Name}: at {result.Best[0].Score.Spot.Name} the weakest seat is {Headroom.Words(result.Best[0].Score)} the required margin",
        Caption(result.Best[0].Place.HeightMetres))
    {
        Unit = loaded.PlotUnit,
    };

    private string Caption(double heightMetres) =>
        $"Margin to count on ({UncertaintyWords.Reached(confidence)}) less the required margin, dB, at the weakest seat, with a console {loaded.Lengths.Brief(heightMetres)} above the floor anywhere, for {loaded.House.Controller.Name} with {loaded.House.Console.Name}; "
            + $"model: {ModelWords.Of(model.Depth)}. "
            + "Figures at marks are those of the table, each at its own height; the map agrees with them within 0.2 dB almost everywhere. "
            + (model.Occupied.Count > 0 ? $"People sit on {OccupiedWords.List(model.Occupied)}. " : "")
            + (loaded.WhatIf.Count > 0 ? $"What if {loaded.WhatIfWords}. " : "")
            + "Planning estimate.";
}
