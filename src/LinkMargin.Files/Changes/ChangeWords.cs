using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Quantities;
using HouseWords = LinkMargin.Files.Houses.Keys.Sides;

namespace LinkMargin.Files.Changes;

/// <summary>
/// Changes in words, each as what is then so, to follow <c>what if</c> or to stand alone; and the changes that make up an edit, so that an
/// edit of the command line and a step of the page are said alike.
/// </summary>
public static class ChangeWords
{
    /// <summary>The words for the sides of a fixture.</summary>
    internal static IReadOnlyDictionary<string, BoxSides> Sides { get; } = new Dictionary<string, BoxSides>
    {
        ["west"] = BoxSides.West,
        ["east"] = BoxSides.East,
        ["south"] = BoxSides.South,
        ["north"] = BoxSides.North,
        ["bottom"] = BoxSides.Bottom,
        ["top"] = BoxSides.Top,
    };

    /// <summary>A change in words.</summary>
    /// <param name="change">The change.</param>
    /// <param name="house">The house it is made in.</param>
    /// <param name="unit">The unit of its file.</param>
    public static string Of(HouseChange change, House house, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(change);
        ArgumentNullException.ThrowIfNull(house);
        var lengths = new LengthFormat(unit);
        string on = change.Level is { } level && level >= 0 && level < house.Levels.Count && house.Levels.Count > 1 ? $" on {house.Levels[level].Name}" : "";
        string at = change is { X: { } x, Y: { } y } ? $"{lengths.Brief(x)} east, {lengths.Brief(y)} north{(change.Height is { } z ? $", {lengths.Brief(z)} high" : "")}" : "";
        return change.Kind switch
        {
            ChangeKinds.MoveSpot => $"spot '{change.Name}' is at {at}{on}",
            ChangeKinds.MoveSeat => $"seat '{change.Name}' is at {at}{on}",
            ChangeKinds.TurnSeat => $"seat '{change.Name}' faces {Direction(change.Degrees ?? 0)}",
            ChangeKinds.SetOpening => $"{OpeningOf(change, house)}{on} is {(change.Open == true ? "open" : "shut")}",
            ChangeKinds.WallMaterial => $"wall '{change.Name}'{on} is of {change.Material}",
            ChangeKinds.RemoveFixture => $"fixture '{change.Name}' is removed",
            ChangeKinds.OpenSide => $"the {change.Side} side of '{change.Name}' is open",
            ChangeKinds.SwapSide => $"the {change.Side} side of '{change.Name}' is of {change.Material}",
            ChangeKinds.Console => $"the console is {change.Name}",
            ChangeKinds.Controller => $"the controllers are {change.Name}",
            ChangeKinds.RemoveSeat => $"seat '{change.Name}' is on a cable",
            ChangeKinds.People => change.Seats is { Count: > 0 } seats ? $"people sit on {string.Join(", ", seats.Select(seat => $"'{seat}'"))}" : "nobody sits on the seats",
            _ => change.Kind,
        };
    }

    /// <summary>An edit in words.</summary>
    /// <param name="edit">The edit.</param>
    /// <param name="house">The house it is made in.</param>
    /// <param name="unit">The unit of its file.</param>
    public static string Of(HouseEdit edit, House house, LengthUnit unit) => string.Join(" and ", Of(edit).Select(change => Of(change, house, unit)));

    /// <summary>The changes that make up an edit; one for each side of a fixture.</summary>
    public static IEnumerable<HouseChange> Of(HouseEdit edit) => edit switch
    {
        MoveSpot move => [new(ChangeKinds.MoveSpot) { Name = move.Name, Level = move.LevelIndex, X = move.Plan.X, Y = move.Plan.Y, Height = move.HeightMetres }],
        MoveSeat move => [new(ChangeKinds.MoveSeat) { Name = move.Name, Level = move.LevelIndex, X = move.Plan.X, Y = move.Plan.Y, Height = move.HandsMetres }],
        TurnSeat turn => [new(ChangeKinds.TurnSeat) { Name = turn.Name, Degrees = turn.FacingDegrees }],
        SetOpening set => [new(ChangeKinds.SetOpening) { Name = set.Name, Level = set.LevelIndex, Open = set.IsOpen }],
        SetWallMaterial set => [new(ChangeKinds.WallMaterial) { Name = set.Name, Level = set.LevelIndex, Material = set.Material.Name }],
        RemoveFixture remove => [new(ChangeKinds.RemoveFixture) { Name = remove.Name }],
        OpenFixtureSide open => Each(open.Side).Select(side => new HouseChange(ChangeKinds.OpenSide) { Name = open.Name, Side = side }),
        SwapFixtureSide swap => Each(swap.Side).Select(side => new HouseChange(ChangeKinds.SwapSide) { Name = swap.Name, Side = side, Material = swap.Material.Name }),
        SetController set => [new(ChangeKinds.Controller) { Name = set.Controller.Name }],
        SetConsole set => [new(ChangeKinds.Console) { Name = set.Console.Name }],
        RemoveSeat remove => [new(ChangeKinds.RemoveSeat) { Name = remove.Name }],
        _ => throw new ArgumentException($"There is no change for {edit}.", nameof(edit)),
    };

    private static IEnumerable<string> Each(BoxSides sides) => Sides.Where(side => (sides & side.Value) != 0).Select(side => side.Key);

    // A word of the compass where there is one.
    private static string Direction(double degrees) => HouseWords.Directions.FirstOrDefault(word => word.Value == degrees).Key
        ?? FormattableString.Invariant($"{degrees:0}° anticlockwise from east");

    // A step of the journal may name an opening that has since become a gap. Most names already say what it is.
    private static string OpeningOf(HouseChange change, House house)
    {
        IEnumerable<Level> levels = change.Level is { } level && level >= 0 && level < house.Levels.Count ? [house.Levels[level]] : house.Levels;
        Opening? opening = levels.SelectMany(one => one.Walls).SelectMany(wall => wall.Openings).FirstOrDefault(one => one.Name == change.Name);
        string kind = opening?.Kind switch { OpeningKind.Window => "window", OpeningKind.Gap => "gap", _ => "door" };
        return change.Name?.Contains(kind, StringComparison.OrdinalIgnoreCase) == true ? $"'{change.Name}'" : $"{kind} '{change.Name}'";
    }
}
