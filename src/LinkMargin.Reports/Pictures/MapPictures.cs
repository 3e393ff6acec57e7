using System.Globalization;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Contours;
using LinkMargin.Plots.Maps;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Pictures;

/// <summary>Which margins maps show.</summary>
/// <param name="Spots">The spots, at least one.</param>
/// <param name="Confidence">Share of cases in which the margin to count on is reached, above 0 and below 1.</param>
/// <param name="ShowsMedian">Whether the median margin is shown instead of the margin to count on.</param>
internal sealed record MapView(IReadOnlyList<Spot> Spots, double Confidence, bool ShowsMedian);

/// <summary>The pictures of some fields, all with one colour scale so that they can be compared.</summary>
internal sealed class MapPictures
{
    private readonly LoadedHouse loaded;
    private readonly House house; // including the people on its seats
    private readonly IReadOnlyList<(Field Median, Field AtConfidence)> fields;
    private readonly MapView view;
    private readonly HouseUncertainty uncertainty;
    private readonly Dictionary<Spot, LinkBudget[]> budgets;
    private readonly ColourRange range;
    private readonly Ranking ranking;
    private readonly LinkModel model;

    /// <summary>Prepares the drawing.</summary>
    public MapPictures(LoadedHouse loaded, LinkModel model, IReadOnlyList<(Field Median, Field AtConfidence)> fields, MapView view, HouseUncertainty? known = null)
    {
        this.loaded = loaded;
        this.view = view;
        this.fields = fields;
        house = model.House;
        RequiredDb = RequiredMargin.OfMost(loaded.House);
        range = ColourRange.Covering(fields.Select(f => Shown(f.Median, f.AtConfidence)), RequiredDb);
        uncertainty = known ?? HouseUncertainty.Of(model, view.Spots, loaded.House.Seats, loaded.Uncertainty, view.Confidence);
        budgets = view.Spots
            .ToDictionary(spot => spot, spot => LinkEvaluation.Budgets(model, spot, loaded.House.Seats.Where(seat => seat.IsPlayedAt(spot))));
        ranking = Ranking.Of(view.Spots.Where(spot => budgets[spot].Length > 0).Select(spot => new SpotScore(spot, budgets[spot], uncertainty.AtConfidence)));
        this.model = model;
    }

    /// <summary>The margin of the boldest line, dB.</summary>
    public double RequiredDb { get; }

    /// <summary>The picture of one field.</summary>
    public byte[] Map(Field field, Field atConfidence)
    {
        MapRequest request = RequestFor(field, atConfidence);
        return MapPicture.Render(request, MapPicture.FittingSize(request));
    }

    /// <summary>The content of the picture of one field.</summary>
    internal MapRequest RequestFor(Field field, Field atConfidence)
    {
        string title = MapFindings.OfMap(field.Spot, LevelOf(field), SeatsOf(field), FieldSummary.Of(atConfidence, RequiredDb), RequiredDb);
        return new MapRequest(house, Shown(field, atConfidence), SeatsOf(field), RequiredDb, range, title, Caption(field))
        {
            Unit = loaded.PlotUnit,
            Hatched = atConfidence,
        };
    }

    /// <summary>The content of the sheet of all fields: the best spot first, the finding above, a verdict below each column.</summary>
    internal SheetRequest RequestForSheet()
    {
        Spot[] bestFirst = [.. ranking.Scores.Select(score => score.Spot), .. view.Spots.Except(ranking.Scores.Select(score => score.Spot))];
        SheetMap[] maps =
        [
            .. fields.OrderBy(field => Array.IndexOf(bestFirst, field.Median.Spot))
                .Select(field => new SheetMap(Shown(field.Median, field.AtConfidence), SeatsOf(field.Median)) { Hatched = field.AtConfidence }),
        ];
        string title = ranking.Scores.Count > 0
            ? MapFindings.OfSpots(ranking, HasAllSpots)
            : $"{loaded.House.Name}: every spot on every level, no seats";
        return new SheetRequest(house, maps, RequiredDb, range, title, Caption(fields[0].Median))
        {
            Unit = loaded.PlotUnit,
            Verdicts = [.. ranking.Scores.Select(score => new SheetVerdict(score.Spot, SeatWords.Passing(score), MapFindings.Weakest(score)))],
        };
    }

    /// <summary>The sheet of all fields.</summary>
    public byte[] Sheet()
    {
        SheetRequest request = RequestForSheet();
        return MapSheet.Render(request, MapSheet.FittingSize(request));
    }

    private Field Shown(Field median, Field atConfidence) => view.ShowsMedian ? median : atConfidence;

    private bool HasAllSpots => view.Spots.Count == loaded.House.Spots.Count;

    private string Caption(Field field) =>
        $"{What}, worse of both directions, with the hands {Hands(field)} above the floor of {loaded.House.Name}, for {loaded.House.Controller.Name} with {loaded.House.ConsoleAt(field.Spot).Name}; "
            + $"model: {ModelWords.Of(model.Depth)}{Facing(model)}; {Accuracy(field)}{People(model)}{loaded.WhatIfCaption}"
            + $"patches smaller than {loaded.Lengths.ExactArea(ContourIslands.LeastSquareMetres)} with no seat on them are smoothed away; planning estimate.";

    private string What => view.ShowsMedian
        ? $"Median link margin, dB; hatched where the margin to count on ({UncertaintyWords.Reached(view.Confidence)}) is below the required margin"
        : $"Link margin to count on, dB ({UncertaintyWords.Reached(view.Confidence)})";

    // A cell of a map is not a seat, so nobody faces any way there.
    private static string Facing(LinkModel model) => model.Depth == ModelDepth.Full ? ", averaged over facing" : "";

    // Stated by FieldStage.Map and checked by a test.
    private static string Accuracy(Field field) => field.Stage == FieldStage.Exact
        ? "" : string.Create(CultureInfo.InvariantCulture, $"interpolated within rooms: 99 of 100 cells within {ProgressiveField.MapAccuracyDb} dB of the exact figure; ");

    private static string People(LinkModel model) =>
        model.Occupied.Count == 0 ? "" : $"with people on {OccupiedWords.List(model.Occupied)}; ";

    private SeatMark[] SeatsOf(Field field) =>
    [
        .. budgets[field.Spot].Where(b => b.Seat.LevelIndex == field.LevelIndex).Select(b => new SeatMark(
            b.Seat, view.ShowsMedian ? uncertainty.With(b).MedianDb : uncertainty.MarginAtConfidenceDb(b), uncertainty.AtConfidence.Passes(b)) { MarginAtConfidenceDb = uncertainty.MarginAtConfidenceDb(b) }),
    ];

    private string LevelOf(Field field) => loaded.House.Levels[field.LevelIndex].Name;

    private string Hands(Field field) => loaded.Lengths.Brief(field.HandsMetres);
}
