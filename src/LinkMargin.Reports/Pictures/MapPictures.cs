using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Maps;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Pictures;

/// <summary>Which figures maps show.</summary>
/// <param name="Spots">The spots, at least one.</param>
/// <param name="Confidence">Share of cases in which the margin to count on is reached, above 0 and below 1.</param>
/// <param name="ShowsMedian">Whether the median is shown instead of the margin to count on.</param>
internal sealed record MapView(IReadOnlyList<Spot> Spots, double Confidence, bool ShowsMedian);

/// <summary>The pictures of some fields, all in one range of colours so that they can be compared side by side.</summary>
internal sealed class MapPictures
{
    private readonly LoadedHouse loaded;
    private readonly House house; // with the people on its seats
    private readonly IReadOnlyList<(Field Median, Field AtConfidence)> fields;
    private readonly MapView view;
    private readonly HouseUncertainty uncertainty;
    private readonly Dictionary<Spot, LinkBudget[]> budgets;
    private readonly ColourRange range;
    private readonly string caption;

    /// <summary>Gets ready to draw.</summary>
    public MapPictures(LoadedHouse loaded, LinkModel model, IReadOnlyList<(Field Median, Field AtConfidence)> fields, MapView view)
    {
        this.loaded = loaded;
        this.view = view;
        this.fields = fields;
        house = model.House;
        RequiredDb = RequiredMargin.OfMost(loaded.House);
        range = ColourRange.Covering(fields.Select(f => Shown(f.Median, f.AtConfidence)), RequiredDb);
        uncertainty = HouseUncertainty.Of(model, view.Spots, loaded.House.Seats, loaded.Uncertainty, view.Confidence);
        budgets = view.Spots
            .ToDictionary(spot => spot, spot => LinkEvaluation.Budgets(model, spot, loaded.House.Seats.Where(seat => seat.IsPlayedAt(spot))));
        caption = $"{What}, worse of both directions, for {loaded.House.Controller.Name} with {loaded.House.Console.Name}; "
            + $"model: {ModelWords.Of(model.Depth)}{Facing(model)}; {People(model)}{loaded.WhatIfCaption}planning estimate.";
    }

    /// <summary>The margin of the heaviest line, dB.</summary>
    public double RequiredDb { get; }

    /// <summary>One field.</summary>
    public byte[] Map(Field field, Field atConfidence)
    {
        MapRequest request = RequestFor(field, atConfidence);
        return MapPicture.Render(request, MapPicture.FittingSize(request));
    }

    /// <summary>What the picture of one field shows.</summary>
    internal MapRequest RequestFor(Field field, Field atConfidence)
    {
        string title = $"{loaded.House.Name}: console at '{field.Spot.Name}', hands {Hands(field)} above the floor of '{LevelOf(field)}'";
        return new MapRequest(house, Shown(field, atConfidence), SeatsOf(field), RequiredDb, range, title, caption)
        {
            Unit = loaded.PlotUnit,
            Hatched = atConfidence,
        };
    }

    /// <summary>All fields on one sheet.</summary>
    public byte[] Sheet()
    {
        string title = $"{loaded.House.Name}: every spot on every level, hands {Hands(fields[0].Median)} above the floor";
        SheetMap[] maps = [.. fields.Select(field => new SheetMap(Shown(field.Median, field.AtConfidence), SeatsOf(field.Median)) { Hatched = field.AtConfidence })];
        var request = new SheetRequest(house, maps, RequiredDb, range, title, caption) { Unit = loaded.PlotUnit };
        return MapSheet.Render(request, MapSheet.FittingSize(request));
    }

    private Field Shown(Field median, Field atConfidence) => view.ShowsMedian ? median : atConfidence;

    private string What => view.ShowsMedian
        ? $"Median link margin, dB; hatched where the margin to count on ({UncertaintyWords.Often(view.Confidence)}) is below the required margin"
        : $"Link margin to count on, dB ({UncertaintyWords.Often(view.Confidence)})";

    // A cell of a map is not a seat, so it has no facing.
    private static string Facing(LinkModel model) => model.Depth == ModelDepth.Full ? ", averaged over facing" : "";

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
