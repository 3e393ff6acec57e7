using LinkMargin.Cli.Commands;
using LinkMargin.Cli.Options;
using LinkMargin.Cli.Output;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Maps;

namespace LinkMargin.Cli.Maps;

/// <summary>The pictures of some fields, all in one range of colours so that they can be laid side by side.</summary>
internal sealed class MapPictures
{
    private readonly LoadedHouse loaded;
    private readonly House house; // with the people on its seats
    private readonly IReadOnlyList<(Field Median, Field Counted)> fields;
    private readonly MapOrder order;
    private readonly HouseUncertainty uncertainty;
    private readonly Dictionary<Spot, LinkBudget[]> budgets;
    private readonly ColourRange range;
    private readonly string caption;

    /// <summary>Gets ready to draw.</summary>
    public MapPictures(LoadedHouse loaded, LinkModel model, IReadOnlyList<(Field Median, Field Counted)> fields, MapOrder order)
    {
        this.loaded = loaded;
        this.order = order;
        this.fields = fields;
        house = model.House;
        RequiredDb = RequiredMargin.OfMost(loaded.House);
        range = ColourRange.Covering(fields.Select(f => Shown(f.Median, f.Counted)), RequiredDb);
        uncertainty = HouseUncertainty.Of(model, order.Spots, loaded.House.Seats, loaded.Uncertainty, order.Confidence);
        budgets = order.Spots
            .ToDictionary(spot => spot, spot => LinkEvaluation.Budgets(model, spot, loaded.House.Seats.Where(seat => seat.IsPlayedAt(spot))));
        caption = $"{What}, the worse of both directions, for {loaded.House.Controller.Name} with {loaded.House.Console.Name}; "
            + $"{ModelOption.InWords(model.Depth)}{Facing(model)}; {People(model)}{loaded.WhatIfCaption}an estimate for planning.";
    }

    /// <summary>The margin of the heaviest line, dB.</summary>
    public double RequiredDb { get; }

    /// <summary>One field.</summary>
    public byte[] Map(Field field, Field counted)
    {
        MapRequest request = RequestFor(field, counted);
        return MapPicture.Render(request, MapPicture.FittingSize(request));
    }

    /// <summary>What the picture of one field shows.</summary>
    internal MapRequest RequestFor(Field field, Field counted)
    {
        string title = $"{loaded.House.Name}: console at '{field.Spot.Name}', hands {Hands(field)} above the floor of '{LevelOf(field)}'";
        return new MapRequest(house, Shown(field, counted), SeatsOf(field), RequiredDb, range, title, caption)
        {
            Unit = loaded.PlotUnit,
            Hatched = counted,
        };
    }

    /// <summary>All fields on one sheet.</summary>
    public byte[] Sheet()
    {
        string title = $"{loaded.House.Name}: every spot on every level, hands {Hands(fields[0].Median)} above the floor";
        SheetMap[] maps = [.. fields.Select(field => new SheetMap(Shown(field.Median, field.Counted), SeatsOf(field.Median)) { Hatched = field.Counted })];
        var request = new SheetRequest(house, maps, RequiredDb, range, title, caption) { Unit = loaded.PlotUnit };
        return MapSheet.Render(request, MapSheet.FittingSize(request));
    }

    private Field Shown(Field median, Field counted) => order.ShowsMedian ? median : counted;

    private string What => order.ShowsMedian
        ? $"Median link margin in dB, hatched by the margin to count on, which is there {UncertaintyWords.Often(order.Confidence)}"
        : $"Link margin to count on in dB ({UncertaintyWords.Often(order.Confidence)} there is as much)";

    // A cell of a map is no seat, so nobody says where its player looks.
    private static string Facing(LinkModel model) => model.Depth == ModelDepth.Full ? ", averaged over facing" : "";

    private static string People(LinkModel model) =>
        model.Occupied.Count == 0 ? "" : $"with people on {OccupiedWords.List(model.Occupied)}; ";

    private SeatMark[] SeatsOf(Field field) =>
    [
        .. budgets[field.Spot].Where(b => b.Seat.LevelIndex == field.LevelIndex).Select(b => new SeatMark(
            b.Seat, order.ShowsMedian ? uncertainty.With(b).MedianDb : uncertainty.MarginAtConfidenceDb(b), uncertainty.AtConfidence.Passes(b)) { MarginAtConfidenceDb = uncertainty.MarginAtConfidenceDb(b) }),
    ];

    private string LevelOf(Field field) => loaded.House.Levels[field.LevelIndex].Name;

    private string Hands(Field field) => loaded.Lengths.Brief(field.HandsMetres);
}
