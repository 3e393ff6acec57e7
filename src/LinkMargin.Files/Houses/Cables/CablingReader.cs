using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Cables;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Houses.Placement;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Tables;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Cables;

/// <summary>Reads displays, devices, passages and cables.</summary>
/// <param name="placement">Levels and fixtures.</param>
/// <param name="spots">The spots.</param>
/// <param name="seats">The seats.</param>
/// <param name="tables">The tables, for the kinds of cable.</param>
internal sealed class CablingReader(PlacementContext placement, IReadOnlyList<Spot> spots, IReadOnlyList<Seat> seats, MaterialTables tables)
{
    private static readonly Dictionary<string, DisplayInput> Inputs = new()
    {
        ["direct"] = DisplayInput.Direct, ["processed"] = DisplayInput.Processed,
    };

    private static readonly Dictionary<string, DeviceRole> Roles = new()
    {
        ["processor"] = DeviceRole.Processor, ["splitter"] = DeviceRole.Splitter,
    };

    private static readonly string[] Groups = ["displays", "devices", "passages", "cables"];

    private readonly Source source = placement.Source;

    /// <summary>Reads all that can be read.</summary>
    public Cabling Read(MappingReader file)
    {
        if (!Groups.Any(file.Has))
        {
            return Cabling.None;
        }

        List<Device> devices = [.. All(file, "devices", "a device", HouseKeys.Device, Device)];
        List<Display> displays = [.. All(file, "displays", "a display", HouseKeys.Display, (group, name) => Display(group, name, devices))];
        Dictionary<string, CablePlace> places = [];
        IEnumerable<CablePlace> named =
        [
            .. devices.Select(device => device.Place),
            .. displays.Select(display => display.Place),
            .. placement.Fixtures.Select(PlaceOf),
            .. spots.Select(spot => new CablePlace(spot.Name, spot.LevelIndex, spot.Plan, spot.HeightMetres, ShellAround(spot)?.Name)),
            .. seats.Select(seat => new CablePlace(seat.Name, seat.LevelIndex, seat.Plan, seat.HandsMetres, null)),
        ];
        foreach (CablePlace place in named)
        {
            places.TryAdd(place.Name, place);
        }

        return new Cabling
        {
            Displays = displays,
            Devices = devices,
            Passages = [.. All(file, "passages", "a passage", HouseKeys.Passage, Passage)],
            Cables = [.. All(file, "cables", "a cable", HouseKeys.PulledCable, (group, name) => Cable(group, name, places))],
            Kinds = tables.Cables,
        };
    }

    private IEnumerable<T> All<T>(MappingReader file, string key, string what, string[] keys, Func<MappingReader, string, T?> read)
        where T : class
    {
        Names names = new(source, what);
        List<MappingReader> groups = [.. file.OptionalGroups(key, what, keys)];
        TooMany.Check(source, file, key, groups.Count, HouseLimits.MostCabling);
        foreach (MappingReader group in groups.Take(HouseLimits.MostCabling))
        {
            string? name = group.RequiredName("name");
            if (name is not null)
            {
                names.Take(name, group.MarkOf("name"));
            }

            if (read(group, name ?? what) is { } thing && name is not null)
            {
                yield return thing;
            }
        }
    }

    private Device? Device(MappingReader group, string name)
    {
        int inputs = Count(group, "inputs", HouseLimits.Sockets) ?? 1, outputs = Count(group, "outputs", HouseLimits.Sockets) ?? 1;
        DeviceRole role = group.OptionalWord("role", Roles, "a role of a device") ?? (outputs > inputs ? DeviceRole.Splitter : DeviceRole.Processor);
        double? passes = group.Optional("passes") is { } node ? CableTableReader.Rate(source, node, "passes") : null;
        if (role == DeviceRole.Splitter && outputs < 2)
        {
            source.Error(group.MarkOf(group.Has("outputs") ? "outputs" : "role"), "outputs: a splitter has at least 2; fix 'outputs' or 'role'");
        }

        return Place(group, name, "inside") is { } place ? new Device(name, role, place, inputs, outputs) { PassesGbps = passes } : null;
    }

    private Display? Display(MappingReader group, string name, List<Device> devices)
    {
        List<DisplayInput> inputs = [];
        foreach (Node item in group.OptionalItems("inputs"))
        {
            if (ValueReader.TryChoose(source, item, "inputs", Inputs, "an input of a display", null, out DisplayInput input))
            {
                if (inputs.Contains(input))
                {
                    source.Error(item.Mark, "inputs: this input is listed twice; remove one");
                }

                inputs.Add(input);
            }
        }

        PictureSignal? signal = group.Optional("signal") is { } word ? Signal(word) : PictureSignal.Usual;
        double? takes = group.Optional("takes") is { } node ? CableTableReader.Rate(source, node, "takes") : null;
        string? through = group.OptionalName("through");
        string[] processors = [.. devices.Where(device => device.Role == DeviceRole.Processor).Select(device => device.Name)];
        if (through is not null && !processors.Contains(through))
        {
            source.Error(group.MarkOf("through"), $"through: no processor is named {Quote.Of(through)}; {source.Advice(through, processors)}");
        }

        if (inputs.Contains(DisplayInput.Processed) && processors.Length == 0)
        {
            source.Warning(group.MarkOf("inputs"), $"inputs: no processor is described under 'devices', so the processed input of {Quote.Of(name)} is fed straight from the console");
        }

        return Place(group, name, "fixture") is { } place && signal is not null
            ? new Display(name, place, inputs.Count == 0 ? [DisplayInput.Direct] : inputs, signal) { TakesGbps = takes, Through = through }
            : null;
    }

    private PictureSignal? Signal(Node node)
    {
        if (ValueReader.Text(source, node, "signal") is not { } text)
        {
            return null;
        }

        (PictureSignal? signal, string? fault) = SignalText.Parse(text);
        if (fault is not null)
        {
            source.Error(node.Mark, $"signal: {Quote.Of(text)} {fault}");
        }

        return signal;
    }

    // In or at a fixture, or by level and place.
    private CablePlace? Place(MappingReader group, string name, string fixtureKey)
    {
        double? height = fixtureKey == "inside" ? group.OptionalLength("height", HouseLimits.HeightOverFloor) : null;
        if (group.Has(fixtureKey) == group.Has("at"))
        {
            source.Error(group.Mark, $"{group.What} needs either '{fixtureKey}' or 'level' and 'at: [x, y, height]'");
            return null;
        }

        if (group.Has(fixtureKey))
        {
            if (group.OptionalName(fixtureKey) is not { } fixtureName || placement.UnreadFixtures.Contains(fixtureName))
            {
                return null;
            }

            if (!placement.FixturesByName.TryGetValue(fixtureName, out Fixture? fixture))
            {
                source.Error(group.MarkOf(fixtureKey), $"{fixtureKey}: no fixture is named {Quote.Of(fixtureName)}; {source.Advice(fixtureName, [.. placement.FixturesByName.Keys])}");
                return null;
            }

            CablePlace at = PlaceOf(fixture) with { Name = name };
            return height is { } metres ? at with { HeightMetres = metres } : at;
        }

        int? level = placement.LevelOf(group);
        Point3? place = group.Optional("at") is { } node ? PlaceReader.Space(source, node, "at") : null;
        if (level is not { } index || place is not { } found)
        {
            return null;
        }

        placement.CheckHeight(index, found.Z, group.MarkOf("at"), "at (height)");
        placement.CheckPlace(index, found.Plan, found.Z, group.MarkOf("at"), $"{group.What} {Quote.Of(name)}");
        return new CablePlace(name, index, found.Plan, found.Z, null);
    }

    private Passage? Passage(MappingReader group, string name)
    {
        Point2? from = group.Required("from") is { } first ? PlaceReader.Plan(source, first, "from") : null;
        Point2? to = group.Optional("to") is { } second ? PlaceReader.Plan(source, second, "to") : from;
        int[]? levels = Levels(group);
        double? bore = group.OptionalLength("bore", HouseLimits.PassageSide);
        PlugSize? clear = Clear(group);
        if (group.Has("bore") && group.Has("clear"))
        {
            source.Error(group.MarkOf("clear"), "a passage has either a 'bore' or a 'clear' width and height; remove one");
        }

        int bends = Count(group, "bends", HouseLimits.Bends) ?? 0;
        List<CableKind> holds = [];
        IReadOnlyList<Node> held = group.OptionalItems("holds");
        TooMany.Check(source, group, "holds", held.Count, HouseLimits.MostHeld);
        foreach (Node item in held.Take(HouseLimits.MostHeld))
        {
            if (ValueReader.TryChoose(source, item, "holds", KindsByName, "a kind of cable", "cables.yaml lists them", out CableKind? kind))
            {
                holds.Add(kind);
            }
        }

        if (from is not { } start || to is not { } end || levels is null)
        {
            return null;
        }

        if (levels[0] == levels[1] && start.DistanceTo(end) < HouseLimits.SameHeight)
        {
            source.Error(group.Mark, $"the passage {Quote.Of(name)} joins nothing: both ends are in one place; write two 'levels', or where it leads 'to'");
        }

        foreach ((int level, Point2 at) in new[] { (levels[0], start), (levels[1], end) }.Where(pair => !IsInRoom(pair.Item1, pair.Item2)).Distinct())
        {
            source.Error(group.MarkOf(at == start || !group.Has("to") ? "from" : "to"),
                $"the passage {Quote.Of(name)} joins nothing on the level {Quote.Of(placement.NameOf(level))}: {source.Lengths.Place(at)} is in no room there; fix the place or 'levels'");
        }

        return new Passage(name, Math.Min(levels[0], levels[1]), Math.Max(levels[0], levels[1]), levels[0] <= levels[1] ? start : end, levels[0] <= levels[1] ? end : start)
        {
            BoreMetres = bore, Clear = clear, Bends = bends, Holds = holds,
        };
    }

    private int[]? Levels(MappingReader group)
    {
        IReadOnlyList<Node> items = group.RequiredItems("levels");
        if (items.Count is not (1 or 2))
        {
            if (items.Count > 2)
            {
                source.Error(group.MarkOf("levels"), "levels: write the one level the passage is on, or the two it joins");
            }

            return null;
        }

        int?[] levels = [.. items.Select(item => ValueReader.Name(source, item, "levels") is { } name ? placement.LevelNamed(name, item.Mark, "levels") : null)];
        return levels.Any(level => level is null) ? null : [levels[0]!.Value, levels[^1]!.Value];
    }

    private PlugSize? Clear(MappingReader group)
    {
        if (group.Optional("clear") is not { } node || PlaceReader.Numbers(source, node, "clear", 2, "[width, height]") is not { } pair)
        {
            return null;
        }

        double? width = ValueReader.Length(source, pair[0], "clear (width)", HouseLimits.PassageSide);
        double? height = ValueReader.Length(source, pair[1], "clear (height)", HouseLimits.PassageSide);
        return width is { } w && height is { } h ? new PlugSize(w, h) : null;
    }

    private PulledCable? Cable(MappingReader group, string name, Dictionary<string, CablePlace> places)
    {
        CablePlace? from = End(group, "from", places), to = End(group, "to", places);
        CableKind? kind = group.RequiredChoice("kind", KindsByName, "a kind of cable", "cables.yaml lists them");
        double? length = group.OptionalLength("length", HouseLimits.PulledLength);
        if (from is null || to is null || kind is null)
        {
            return null;
        }

        if (from.Name == to.Name)
        {
            source.Error(group.MarkOf("to"), $"the cable {Quote.Of(name)} leads back to where it begins; fix 'from' or 'to'");
        }

        double straight = placement.DistanceOf(from.LevelIndex, from.Plan, from.HeightMetres, to.LevelIndex, to.Plan, to.HeightMetres);
        if (length < straight - HouseLimits.SameHeight)
        {
            source.Error(group.MarkOf("length"),
                $"length: the cable {Quote.Of(name)} is {source.Lengths.Exact(length.Value)} long, but its ends are {source.Lengths.Exact(Math.Ceiling(straight * 100) / 100)} apart in a straight line; fix 'length', or where it ends");
        }

        return new PulledCable(name, from, to, kind, length);
    }

    private CablePlace? End(MappingReader group, string key, Dictionary<string, CablePlace> places)
    {
        if (group.RequiredName(key) is not { } name || placement.UnreadFixtures.Contains(name))
        {
            return null;
        }

        if (places.TryGetValue(name, out CablePlace? place))
        {
            return place;
        }

        source.Error(group.MarkOf(key), $"{key}: no device, display, fixture, spot or seat is named {Quote.Of(name)}; {source.Advice(name, places.Keys)}");
        return null;
    }

    private Dictionary<string, CableKind>? kindsByName;

    private Dictionary<string, CableKind> KindsByName => kindsByName ??= tables.Cables.ToDictionary(kind => kind.Name);

    private int? Count(MappingReader group, string key, QuantityRange range)
    {
        if (group.OptionalNumber(key, Quantity.Plain, range) is not { } number)
        {
            return null;
        }

        if (number != Math.Floor(number))
        {
            source.Error(group.MarkOf(key), $"{key}: write a whole number");
            return null;
        }

        return (int)number;
    }

    private bool IsInRoom(int level, Point2 at) =>
        placement.RoomsOf(level).Count == 0 || placement.RoomsOf(level).Any(room => room.Outline.DepthOf(at) >= -HouseLimits.PassageAside);

    private Fixture? ShellAround(Spot spot) => placement.Fixtures.Find(
        fixture => fixture.IsShell && fixture.LevelIndex == spot.LevelIndex && fixture.Contains(spot.Plan, spot.HeightMetres));

    private static CablePlace PlaceOf(Fixture fixture) =>
        new(fixture.Name, fixture.LevelIndex, fixture.Centre, (fixture.FromMetres + fixture.ToMetres) / 2, fixture.Name);
}
