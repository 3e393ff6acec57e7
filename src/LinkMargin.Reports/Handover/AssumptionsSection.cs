using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Reports.Documents;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Handover;

/// <summary>Everything the house file says that was taken as true.</summary>
/// <param name="findings">What was computed.</param>
internal sealed class AssumptionsSection(HandoverFindings findings)
{
    private readonly House house = findings.House;

    /// <summary>The section.</summary>
    public ReportSection Section => new("assumptions", "What was assumed",
    [
        new TableBlock(
            [new TableColumn("Part", 1.6), new TableColumn("Taken to be", 5), new TableColumn("Loss, dB", 0.9, true), new TableColumn("±, dB", 0.7, true)],
            [.. Walls, .. Floors, .. Openings, .. Fixtures]) { IsSmall = true },
        new ListBlock(
        [
            new ListItem($"Console: {RadioWords(house.Console)}. Controllers: {RadioWords(house.Controller)}."),
            .. house.Spots.Where(spot => spot.Radio is not null).Select(spot => new ListItem($"Console at '{spot.Name}': {RadioWords(spot.Radio!)}.")),
            new ListItem(Doors),
            new ListItem(findings.Model.Occupied.Count > 0
                ? $"People sit on {OccupiedWords.List(findings.Model.Occupied)} and shadow the links of other seats."
                : "Nobody stands in the way but the player."),
            new ListItem($"Model: {ModelWords.Of(findings.Model.Depth)}. Losses are means over the 2.4 GHz band."),
        ]),
        new ParagraphBlock(
            "Loss: median of one crossing head on at 2.4 GHz. ±: one standard deviation between one example and another. The tables behind this report name the source of each figure; ask for it where one matters.",
            TextWeight.Small),
    ]);

    private IEnumerable<IReadOnlyList<TableCell>> Walls => Rows("walls", house.Levels.SelectMany(level => level.Walls).Select(wall => wall.Material));

    private IEnumerable<IReadOnlyList<TableCell>> Openings => Rows(
        "doors, windows", house.Levels.SelectMany(level => level.Walls).SelectMany(wall => wall.Openings).Select(opening => opening.Leaf).OfType<Material>());

    private IEnumerable<IReadOnlyList<TableCell>> Fixtures => Rows(
        "fixtures", house.Fixtures.Where(fixture => fixture.Seat is null).SelectMany(fixture => fixture.SideMaterials.Values.Prepend(fixture.Material)));

    private IEnumerable<IReadOnlyList<TableCell>> Floors =>
        from level in house.Levels
        where level.Above is not null
        let above = level.Above
        select (IReadOnlyList<TableCell>)
        [
            $"floor above {level.Name}",
            $"{above.BuildUp.Description} ({above.BuildUp.Name}){(above.Joists is { } joists ? $"; joists {findings.Loaded.Lengths.Brief(joists.SpacingMetres)} apart" : "")}",
            Figures.Plain(above.BuildUp.Layers.Sum(layer => layer.Material?.LossDb ?? 0)),
            "",
        ];

    private static IEnumerable<IReadOnlyList<TableCell>> Rows(string part, IEnumerable<Material> materials) => materials
        .GroupBy(material => material.Name)
        .OrderByDescending(alike => alike.Count())
        .Select(alike => (IReadOnlyList<TableCell>)
        [
            part,
            $"{alike.First().Description} ({alike.Key})",
            alike.First().LossDb.ToString("0.#", CultureInfo.InvariantCulture),
            (alike.First().FittedSpreadDb ?? alike.First().SpreadDb).ToString("0.#", CultureInfo.InvariantCulture),
        ]);

    private static string RadioWords(Radio radio) => radio.Description.Length > 0 ? $"{radio.Description} ({radio.Name})" : radio.Name;

    private string Doors
    {
        get
        {
            string[] open =
            [
                .. house.Levels.SelectMany(level => level.Walls.SelectMany(wall => wall.Openings)
                    .Where(opening => opening.Kind == OpeningKind.Door && opening.IsOpen).Select(opening => $"'{opening.Name}' ({level.Name})")),
            ];
            return open.Length == 0 ? "All doors are shut during play." : $"Doors open during play: {string.Join(", ", open)}. All others are shut.";
        }
    }
}
