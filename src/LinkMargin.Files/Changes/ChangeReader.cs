using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Edits;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Changes;

/// <summary>Turns changes into edits, checked as in a written file: names must exist in the house, places must lie inside it.</summary>
public sealed class ChangeReader
{
    // What the page calls the fields that a place is typed into.
    private const string East = "East", North = "North", Height = "Height", Hands = "Hands", Turned = "Facing";

    private readonly House house;
    private readonly MaterialTables tables;
    private readonly EditPlaces places;
    private readonly FileLengths lengths;
    private readonly LengthFormat format;

    /// <summary>Reads changes of a house.</summary>
    /// <param name="house">The house before the change.</param>
    /// <param name="tables">The tables that materials and radios are looked up in.</param>
    /// <param name="bareUnit">The unit of its file.</param>
    public ChangeReader(House house, MaterialTables tables, LengthUnit bareUnit)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(tables);
        (this.house, this.tables, lengths) = (house, tables, new FileLengths(bareUnit));
        (places, format) = (new EditPlaces(house, bareUnit, East, North), new LengthFormat(bareUnit));
    }

    /// <summary>What a change does to the house; empty if it is only about people.</summary>
    /// <exception cref="EditFaultException">It cannot be made; the message gives the reason, to follow the name of the change.</exception>
    public IReadOnlyList<HouseEdit> Read(HouseChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return change.Kind switch
        {
            ChangeKinds.MoveSpot => [MoveSpot(change)],
            ChangeKinds.MoveSeat => [MoveSeat(change)],
            ChangeKinds.TurnSeat => TurnSeat(change),
            ChangeKinds.SetOpening => [SetOpening(change)],
            ChangeKinds.WallMaterial => WallMaterial(change),
            ChangeKinds.RemoveFixture => [new RemoveFixture(FixtureOf(change).Name)],
            ChangeKinds.OpenSide => [new OpenFixtureSide(ShellOf(change).Name, SideOf(change))],
            ChangeKinds.SwapSide => [new SwapFixtureSide(ShellOf(change).Name, SideOf(change), MaterialOf(change))],
            ChangeKinds.Console => [new SetConsole(RadioOf(change))],
            ChangeKinds.Controller => [new SetController(RadioOf(change))],
            ChangeKinds.RemoveSeat => [new RemoveSeat(SeatOf(change).Name)],
            ChangeKinds.People => People(change),
            _ => throw new EditFaultException($"has an unknown kind: {Quote.Of(change.Kind ?? "")}"),
        };
    }

    private MoveSpot MoveSpot(HouseChange change)
    {
        string name = Known("spot", change.Name, house.Spots.Select(spot => spot.Name));
        Spot spot = house.Spots.First(one => one.Name == name);
        (int level, Point2 plan, double height) = PlaceOf(change, spot.LevelIndex, Height, spot.HeightMetres);
        return places.SolidAt(level, plan, height) is { } solid
            ? throw new EditFaultException($"puts the spot inside the fixture {Quote.Of(solid.Name)}, which is solid; choose another place")
            : new MoveSpot(name, level, plan, height);
    }

    private MoveSeat MoveSeat(HouseChange change)
    {
        Seat seat = SeatOf(change);
        (int level, Point2 plan, double height) = PlaceOf(change, seat.LevelIndex, Hands, seat.HandsMetres);
        return seat.Faces is { } faced && house.Fixtures.FirstOrDefault(one => one.Name == faced) is { } fixture && plan.DistanceTo(fixture.Centre) < HouseLimits.SameHeight
            ? throw new EditFaultException($"puts the seat at the centre of the fixture {Quote.Of(faced)} it faces; choose another place")
            : new MoveSeat(seat.Name, level, plan, height);
    }

    // A file has one 'facing' for all players of a seat, so they turn together.
    private HouseEdit[] TurnSeat(HouseChange change)
    {
        Seat seat = SeatOf(change);
        double degrees = Math.Round(Facing.Once(Figure(change.Degrees, Turned))) % 360;
        return [.. house.Seats.Where(one => one.WrittenName == seat.WrittenName).Select(one => new TurnSeat(one.Name, degrees))];
    }

    private SetOpening SetOpening(HouseChange change)
    {
        int level = LevelOf(change);
        string name = Known(
            "door or window",
            change.Name,
            house.Levels[level].Walls.SelectMany(wall => wall.Openings).Where(one => one.Kind != OpeningKind.Gap).Select(one => one.Name));
        return new SetOpening(name, level, change.Open ?? throw new EditFaultException("does not say whether to open or to close it"));
    }

    private HouseEdit[] WallMaterial(HouseChange change)
    {
        int level = LevelOf(change);
        IReadOnlyList<Wall> walls = house.Levels[level].Walls;
        string name = Known("wall", change.Name, walls.Select(wall => wall.Name));
        Material material = MaterialOf(change);
        return [.. WallLine.NamesOf(walls, name).Select(one => new SetWallMaterial(one, level, material))];
    }

    private HouseEdit[] People(HouseChange change)
    {
        foreach (string name in change.Seats ?? [])
        {
            Known("seat", name, house.Seats.Select(seat => seat.Name));
        }

        return [];
    }

    private (int Level, Point2 Plan, double Height) PlaceOf(HouseChange change, int level, string heightField, double height)
    {
        int on = change.Level is null ? level : LevelOf(change);
        Point2 plan = new(Length(change.X, East, HouseLimits.Coordinate), Length(change.Y, North, HouseLimits.Coordinate));
        double over = change.Height is null ? height : Length(change.Height, heightField, HouseLimits.HeightOverFloor);
        places.Check(on, plan, over);
        return (on, plan, over);
    }

    private double Length(double? metres, string field, QuantityRange range)
    {
        double value = lengths.Rounded(Figure(metres, field));
        return range.Contains(value) ? value : throw new EditFaultException($"has {Quote.Of(field)} out of range; {format.Allowed(range)} is allowed");
    }

    private static double Figure(double? value, string field) =>
        value is { } figure && double.IsFinite(figure) ? figure : throw new EditFaultException($"has no {Quote.Of(field)}");

    private int LevelOf(HouseChange change) => change.Level is { } level && level >= 0 && level < house.Levels.Count
        ? level
        : throw new EditFaultException("names no level of the house");

    private Seat SeatOf(HouseChange change)
    {
        string name = Known("seat", change.Name, house.Seats.Select(seat => seat.Name));
        return house.Seats.First(seat => seat.Name == name);
    }

    private Fixture FixtureOf(HouseChange change)
    {
        string name = Known("fixture", change.Name, house.Fixtures.Select(fixture => fixture.Name));
        return house.Fixtures.First(fixture => fixture.Name == name);
    }

    private Fixture ShellOf(HouseChange change) => FixtureOf(change) is { IsShell: true } shell
        ? shell
        : throw new EditFaultException($"changes a side of {Quote.Of(change.Name ?? "")}, which is not hollow");

    private static BoxSides SideOf(HouseChange change) => ChangeWords.Sides.TryGetValue(change.Side ?? "", out BoxSides side)
        ? side
        : throw new EditFaultException($"names the side {Quote.Of(change.Side ?? "")}; write one of: {string.Join(", ", ChangeWords.Sides.Keys)}");

    private Material MaterialOf(HouseChange change)
    {
        string name = Known("material", change.Material, tables.Materials.Keys);
        return tables.Materials[name];
    }

    private Radio RadioOf(HouseChange change) => tables.Radios[Known("radio", change.Name, tables.Radios.Keys)];

    private static string Known(string what, string? name, IEnumerable<string> names) => EditNames.Of(what, name ?? "", names);
}
