using LinkMargin.Cli.Commands;
using LinkMargin.Cli.Options;
using LinkMargin.Cli.Output;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Plots;

namespace LinkMargin.Cli.Maps;

/// <summary>The pictures of some fields, all in one range of colours so that they can be laid side by side.</summary>
internal sealed class MapPictures
{
    private readonly LoadedHouse loaded;
    private readonly House house; // with the people on its seats
    private readonly IReadOnlyList<Field> fields;
    private readonly Dictionary<Spot, LinkBudget[]> budgets;
    private readonly ColourRange range;
    private readonly string caption;

    /// <summary>Gets ready to draw.</summary>
    public MapPictures(LoadedHouse loaded, LinkModel model, IReadOnlyList<Field> fields)
    {
        this.loaded = loaded;
        this.fields = fields;
        house = model.House;
        RequiredDb = RequiredMargin.OfMost(loaded.House);
        range = ColourRange.Covering(fields, RequiredDb);
        budgets = fields.Select(f => f.Spot).Distinct()
            .ToDictionary(spot => spot, spot => LinkEvaluation.Budgets(model, spot, loaded.House.Seats.Where(seat => seat.IsPlayedAt(spot))));
        caption = $"Link margin in dB, the worse of both directions, for {loaded.House.Controller.Name} with {loaded.House.Console.Name}; "
            + $"{ModelOption.InWords(model.Depth)}{Facing(model)}; {People(model)}{loaded.WhatIfCaption}an estimate for planning.";
    }

    /// <summary>The margin of the heaviest line, dB.</summary>
    public double RequiredDb { get; }

    /// <summary>One field.</summary>
    public byte[] Map(Field field)
    {
        string title = $"{loaded.House.Name}: console at '{field.Spot.Name}', hands {Hands(field)} above the floor of '{LevelOf(field)}'";
        var request = new MapRequest(house, field, SeatsOf(field), RequiredDb, range, title, caption) { Unit = loaded.PlotUnit };
        return MapPicture.Render(request, MapPicture.FittingSize(request));
    }

    /// <summary>All fields on one sheet.</summary>
    public byte[] Sheet()
    {
        string title = $"{loaded.House.Name}: every spot on every level, hands {Hands(fields[0])} above the floor";
        SheetMap[] maps = [.. fields.Select(field => new SheetMap(field, SeatsOf(field)))];
        var request = new SheetRequest(house, maps, RequiredDb, range, title, caption) { Unit = loaded.PlotUnit };
        return MapSheet.Render(request, MapSheet.FittingSize(request));
    }

    // A cell of a map is no seat, so nobody says where its player looks.
    private static string Facing(LinkModel model) => model.Depth == ModelDepth.Full ? ", averaged over facing" : "";

    private static string People(LinkModel model) =>
        model.Occupied.Count == 0 ? "" : $"with people on {OccupiedWords.List(model.Occupied)}; ";

    private SeatMark[] SeatsOf(Field field) =>
    [
        .. budgets[field.Spot].Where(b => b.Seat.LevelIndex == field.LevelIndex).Select(b => new SeatMark(b.Seat, b.MarginDb, b.Meets)),
    ];

    private string LevelOf(Field field) => loaded.House.Levels[field.LevelIndex].Name;

    private string Hands(Field field) => loaded.Lengths.Brief(field.HandsMetres);
}
