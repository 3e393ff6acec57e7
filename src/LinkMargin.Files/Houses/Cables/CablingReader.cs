using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Cables;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Houses.Placement;
using LinkMargin.Files.Problems;
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
    private readonly CablePlaceReader placeReader = new(placement);

    /// <summary>Reads everything that is readable.</summary>
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
            .. placement.Fixtures.Select(CablePlace.Of),
            .. spots.Select(spot => CablePlace.Of(spot, placement.Fixtures)),
            .. seats.Select(CablePlace.Of),
        ];
        foreach (CablePlace place in named)
        {
            places.TryAdd(place.Name, place);
        }

        Dictionary<string, CableKind> kinds = tables.Cables.ToDictionary(kind => kind.Name);
        return new Cabling
        {
            Displays = displays,
            Devices = devices,
            Passages = [.. All(file, "passages", "a passage", HouseKeys.Passage, new PassageReader(placement, kinds).Read)],
            Cables = [.. All(file, "cables", "a cable", HouseKeys.PulledCable, new PulledCableReader(placement, kinds, places, devices).Read)],
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
        int inputs = WholeNumber.Optional(source, group, "inputs", HouseLimits.Sockets) ?? 1, outputs = WholeNumber.Optional(source, group, "outputs", HouseLimits.Sockets) ?? 1;
        DeviceRole role = group.OptionalWord("role", Roles, "a role of a device") ?? (outputs > inputs ? DeviceRole.Splitter : DeviceRole.Processor);
        double? passes = group.Optional("passes") is { } node ? CableTableReader.Rate(source, node, "passes") : null;
        if (role == DeviceRole.Splitter && outputs < 2)
        {
            source.Error(group.MarkOf(group.Has("outputs") ? "outputs" : "role"), "outputs: a splitter has at least 2 outputs; fix 'outputs' or 'role'");
        }

        return placeReader.Read(group, name, "inside") is { } place ? new Device(name, role, place, inputs, outputs) { PassesGbps = passes } : null;
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

        return placeReader.Read(group, name, "fixture") is { } place && signal is not null
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
}
