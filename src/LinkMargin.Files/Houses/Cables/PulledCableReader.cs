using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Houses.Placement;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Cables;

/// <summary>Reads cables that are already installed.</summary>
/// <param name="placement">Levels and fixtures.</param>
/// <param name="kinds">The kinds of cable, by name.</param>
/// <param name="places">Where a cable may end, by name.</param>
/// <param name="devices">The devices of the house.</param>
internal sealed class PulledCableReader(
    PlacementContext placement, IReadOnlyDictionary<string, CableKind> kinds, Dictionary<string, CablePlace> places, IEnumerable<Device> devices)
{
    private readonly Source source = placement.Source;
    private readonly HashSet<string> deviceNames = [.. devices.Select(device => device.Name)];
    private readonly List<PulledCable> between = []; // cables between two devices, read so far

    /// <summary>Reads one cable.</summary>
    public PulledCable? Read(MappingReader group, string name)
    {
        CablePlace? from = End(group, "from"), to = End(group, "to");
        CableKind? kind = group.RequiredChoice("kind", kinds, "a kind of cable", "cables.yaml");
        double? length = group.OptionalLength("length", HouseLimits.PulledLength);
        if (from is null || to is null || kind is null)
        {
            return null;
        }

        if (from.Name == to.Name)
        {
            source.Error(group.MarkOf("to"), $"the cable {Quote.Of(name)} starts and ends at the same place; fix 'from' or 'to'");
        }

        double straight = placement.DistanceOf(from.LevelIndex, from.Plan, from.HeightMetres, to.LevelIndex, to.Plan, to.HeightMetres);
        if (length < straight - HouseLimits.SameHeight)
        {
            source.Error(group.MarkOf("length"),
                $"length: the cable {Quote.Of(name)} is {source.Lengths.Exact(length.Value)} long, but its ends are {source.Lengths.Exact(Math.Ceiling(straight * 100) / 100)} apart in a straight line; fix 'length', or where it ends");
        }

        var cable = new PulledCable(name, from, to, kind, length);
        if (deviceNames.Contains(from.Name) && deviceNames.Contains(to.Name) && from.Name != to.Name)
        {
            if (WayBack(cable, [cable]) is { } circle)
            {
                source.Error(group.MarkOf("to"),
                    $"to: the devices feed each other in a loop: {string.Join(", ", circle.Select(one => $"{Quote.Of(one.Name)} from {Quote.Of(one.From.Name)} to {Quote.Of(one.To.Name)}"))}; "
                        + "fix 'from' or 'to' of one of them, or write the fixture it ends at");
            }

            between.Add(cable);
        }

        return cable;
    }

    private CablePlace? End(MappingReader group, string key)
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

    // The cables that lead from the end of the last one back to the start of the first; null if there are none.
    private List<PulledCable>? WayBack(PulledCable first, List<PulledCable> way)
    {
        if (way[^1].To.Name == first.From.Name)
        {
            return way;
        }

        return between.Where(cable => cable.From.Name == way[^1].To.Name && !way.Contains(cable))
            .Select(cable => WayBack(first, [.. way, cable])).FirstOrDefault(found => found is not null);
    }
}
