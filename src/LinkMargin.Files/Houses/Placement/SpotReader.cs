using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Placement;

/// <summary>Reads the candidate places for a console.</summary>
/// <param name="placement">Where things stand.</param>
/// <param name="radioOf">Reads the radio of a spot's own console; null for none.</param>
internal sealed class SpotReader(PlacementContext placement, Func<MappingReader, Radio?> radioOf)
{
    private readonly Source source = placement.Source;
    private readonly List<string> known = [];

    /// <summary>The names of all spots, including those that could not be read.</summary>
    public IReadOnlyCollection<string> AllNames => known;

    /// <summary>Reads all spots that are readable.</summary>
    public List<Spot> ReadAll(MappingReader file)
    {
        Names names = new(source, "a spot");
        List<Spot> spots = [];
        List<MappingReader> groups = [.. file.OptionalGroups("spots", "a spot", HouseKeys.Spot)];
        TooMany.Check(source, file, "spots", groups.Count, HouseLimits.MostSpots);
        if (groups.Count == 0)
        {
            source.Warning(file.MarkOf("spots"), "the house has no spots, so there are no places for a console to compare; add 'spots'");
        }

        foreach (MappingReader group in groups.Take(HouseLimits.MostSpots))
        {
            string? name = group.RequiredName("name");
            if (name is not null)
            {
                names.Take(name, group.MarkOf("name"));
                known.Add(name);
            }

            if (Read(group, name ?? "a spot") is { } spot && name is not null)
            {
                spots.Add(spot);
            }
        }

        return spots;
    }

    private Spot? Read(MappingReader group, string name)
    {
        Spot? spot = group.Has("inside") ? Inside(group, name) : Standing(group, name);
        if (spot is null)
        {
            return null;
        }

        spot = spot with { Radio = radioOf(group) };
        Mark mark = group.MarkOf(group.Has("at") ? "at" : "height");
        string what = $"the spot {Quote.Of(name)}";
        placement.CheckHeight(spot.LevelIndex, spot.HeightMetres, mark, group.Has("at") ? "at (height)" : "height");
        placement.CheckPlace(spot.LevelIndex, spot.Plan, spot.HeightMetres, mark, what);
        if (placement.SolidAt(spot.LevelIndex, spot.Plan, spot.HeightMetres) is { } solid)
        {
            source.Error(mark,
                $"{what} is inside the fixture {Quote.Of(solid.Name)}, which is solid; move it, "
                    + "or make the fixture a shell with 'shell: true' or 'open: [front]'");
        }

        return group.OptionalGroup("lead", "a lead", HouseKeys.SpotLead) is { } lead ? OnLead(spot, lead, what) : spot;
    }

    // The spot with its radio at the end of the lead.
    private Spot OnLead(Spot spot, MappingReader group, string what)
    {
        double? length = group.RequiredLength("length", HouseLimits.LeadLength);
        Point3? to = group.Required("to") is { } node ? PlaceReader.Space(source, node, "to") : null;
        if (length is not { } metres || to is not { } end)
        {
            return spot;
        }

        Mark mark = group.MarkOf("to");
        string receiver = $"the receiver of {what}";
        placement.CheckHeight(spot.LevelIndex, end.Z, mark, "to (height)");
        placement.CheckPlace(spot.LevelIndex, end.Plan, end.Z, mark, receiver);
        if (placement.SolidAt(spot.LevelIndex, end.Plan, end.Z) is { } solid)
        {
            source.Error(mark, $"{receiver} is inside the fixture {Quote.Of(solid.Name)}, which is solid; move it");
        }

        double straight = placement.DistanceOf(spot.LevelIndex, spot.Plan, spot.HeightMetres, spot.LevelIndex, end.Plan, end.Z);
        if (metres < straight - HouseLimits.SameHeight)
        {
            source.Error(group.MarkOf("length"),
                $"length: the lead of {what} is {source.Lengths.Exact(metres)} long, but its ends are {source.Lengths.Exact(Math.Ceiling(straight * 100) / 100)} apart in a straight line; fix 'length' or 'to'");
        }

        return spot with { Plan = end.Plan, HeightMetres = end.Z, Lead = new SpotLead(metres, spot.Plan, spot.HeightMetres) };
    }

    private Spot? Standing(MappingReader group, string name)
    {
        int? level = placement.LevelOf(group);
        if (group.Has("height"))
        {
            source.Error(group.MarkOf("height"), "'height' goes with 'inside'; a spot by itself has its height in 'at: [x, y, height]'");
        }

        Point3? at = group.Required("at") is { } node ? PlaceReader.Space(source, node, "at") : null;
        return level is { } index && at is { } place ? new Spot(name, index, place.Plan, place.Z) : null;
    }

    private Spot? Inside(MappingReader group, string name)
    {
        Point3? at = group.Optional("at") is { } node ? PlaceReader.Space(source, node, "at") : null;
        double? height = group.OptionalLength("height", HouseLimits.HeightOverFloor);
        if (group.Has("at") == group.Has("height"))
        {
            source.Error(group.Mark, group.Has("at")
                ? "a spot inside a fixture has either 'height', at its centre, or 'at: [x, y, height]'; remove one"
                : "a spot inside a fixture needs its 'height' over the floor, or 'at: [x, y, height]'");
            return null;
        }

        if (Host(group) is not { } host)
        {
            return null;
        }

        if (group.Has("level") && placement.LevelOf(group) is { } level && level != host.LevelIndex)
        {
            source.Error(group.MarkOf("level"), $"the fixture {Quote.Of(host.Name)} stands on the level {Quote.Of(placement.NameOf(host.LevelIndex))}, not on {Quote.Of(placement.NameOf(level))}; remove 'level' or fix it");
        }

        Point3? place = at ?? (height is { } z ? host.Centre.At(z) : null);
        if (place is not { } found)
        {
            return null;
        }

        if (!host.Contains(found.Plan, found.Z, HouseLimits.SameHeight))
        {
            source.Error(group.MarkOf(at is null ? "height" : "at"), 
                $"this place is not inside the fixture {Quote.Of(host.Name)}, "
                    + $"which reaches from {source.Lengths.Exact(host.FromMetres)} to {source.Lengths.Exact(host.ToMetres)} above the floor around {source.Lengths.Place(host.Centre)}; fix it or remove 'inside'");
            return null;
        }

        return new Spot(name, host.LevelIndex, found.Plan, found.Z);
    }

    private Fixture? Host(MappingReader group)
    {
        if (group.OptionalName("inside") is not { } name || placement.UnreadFixtures.Contains(name))
        {
            return null;
        }

        if (placement.FixturesByName.TryGetValue(name, out Fixture? host))
        {
            return host;
        }

        source.Error(group.MarkOf("inside"), $"inside: no fixture is named {Quote.Of(name)}; {source.Advice(name, [.. placement.FixturesByName.Keys])}");
        return null;
    }
}
