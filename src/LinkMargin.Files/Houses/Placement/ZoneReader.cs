using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Placement;

/// <summary>Reads where a console may stand, and where none may.</summary>
internal sealed class ZoneReader(PlacementContext placement)
{
    private static readonly string[] Ways = ["room", "corner", "outline"];

    private readonly Source source = placement.Source;

    /// <summary>Reads all zones that are readable.</summary>
    public List<Zone> ReadZones(MappingReader file)
    {
        List<Zone> zones = [];
        foreach ((MappingReader group, string name) in Groups(file, "zones", "a zone", HouseKeys.Zone))
        {
            int? level = placement.LevelOf(group);
            Polygon? outline = Outline(group, level, $"the zone {Quote.Of(name)}");
            double[]? heights = Heights(group, level);
            if (level is { } index && outline is not null && heights is not null)
            {
                zones.Add(new Zone(name, index, outline, heights));
            }
        }

        return zones;
    }

    /// <summary>Reads all keep-outs that are readable.</summary>
    public List<KeepOut> ReadKeepOuts(MappingReader file)
    {
        List<KeepOut> keepOuts = [];
        foreach ((MappingReader group, string name) in Groups(file, "keep-out", "a keep-out", HouseKeys.KeepOut))
        {
            int? level = placement.LevelOf(group);
            Polygon? outline = Outline(group, level, $"the keep-out {Quote.Of(name)}");
            double? from = group.Has("from") ? group.OptionalLength("from", HouseLimits.HeightOverFloor) : 0;
            double? to = group.Has("to")
                ? group.OptionalLength("to", HouseLimits.HeightOverFloor)
                : level is { } on ? placement.HeightOf(on) ?? HouseLimits.LevelHeight.Greatest : null;
            if (from >= to)
            {
                source.Error(group.MarkOf(group.Has("to") ? "to" : "from"), 
                    $"the top of this keep-out, {source.Lengths.Exact(to.Value)}, is not above its underside, {source.Lengths.Exact(from.Value)}; both are measured from the floor");
            }

            if (level is { } index && outline is not null && from is { } bottom && to is { } top)
            {
                keepOuts.Add(new KeepOut(name, index, outline, bottom, top));
            }
        }

        return keepOuts;
    }

    private IEnumerable<(MappingReader Group, string Name)> Groups(MappingReader file, string key, string what, string[] keys)
    {
        Names names = new(source, what);
        List<MappingReader> groups = [.. file.OptionalGroups(key, what, keys)];
        TooMany.Check(source, file, key, groups.Count, HouseLimits.MostZones);
        foreach (MappingReader group in groups.Take(HouseLimits.MostZones))
        {
            string? name = group.RequiredName("name");
            if (name is not null)
            {
                names.Take(name, group.MarkOf("name"));
            }

            yield return (group, name ?? what);
        }
    }

    private Polygon? Outline(MappingReader group, int? level, string what)
    {
        string[] ways = [.. Ways.Where(group.Has)];
        if (group.Has("size") && !group.Has("corner"))
        {
            ways = [.. ways, "size"];
        }

        if (ways.Length != 1)
        {
            source.Error(group.Mark, ways.Length == 0
                ? $"{group.What} needs a 'room', a 'corner' and 'size', or an 'outline'"
                : $"{group.What} gives more than one extent ({string.Join(", ", ways)}); keep one");
            return null;
        }

        if (group.Has("room"))
        {
            return Room(group, level);
        }

        IReadOnlyList<Point2>? corners = group.Has("outline")
            ? group.Optional("outline") is { } node ? PlaceReader.Line(source, node, "outline", 3) : null
            : PlaceReader.Rectangle(group);
        string key = group.Has("outline") ? "outline" : "corner";
        Polygon? outline = corners is null ? null : PolygonCheck.Check(what, corners, group.MarkOf(key), new PlanProblems(source.File, source.Problems, source.Lengths));
        if (outline is not null && level is { } index && outline.Corners.All(corner => placement.IsBeyond(index, corner)))
        {
            source.Warning(group.MarkOf(key), $"{what} lies outside the level {Quote.Of(placement.NameOf(index))}, which reaches {placement.ExtentOf(index)}; check '{key}'");
        }

        return outline;
    }

    private Polygon? Room(MappingReader group, int? level)
    {
        if (group.OptionalName("room") is not { } name || level is not { } index)
        {
            return null;
        }

        IReadOnlyList<Room> rooms = placement.RoomsOf(index);
        Room? room = rooms.FirstOrDefault(r => r.Name == name);
        if (room is null && !placement.MayHaveRoom(index, name))
        {
            source.Error(group.MarkOf("room"),
                $"room: no room of the level {Quote.Of(placement.NameOf(index))} is named {Quote.Of(name)}; {source.Advice(name, [.. rooms.Select(r => r.Name)])}");
        }

        return room?.Outline;
    }

    private double[]? Heights(MappingReader group, int? level)
    {
        IReadOnlyList<Node> items = group.RequiredItems("heights");
        if (items.Count > HouseLimits.MostHeights)
        {
            source.Error(group.MarkOf("heights"), FormattableString.Invariant(
                $"heights: {items.Count} heights, but at most {HouseLimits.MostHeights} are allowed; write another zone"));
            return null;
        }

        double?[] heights = [.. items.Select(item => ValueReader.Length(source, item, "heights", HouseLimits.HeightOverFloor))];
        foreach ((double? height, Node item) in heights.Zip(items))
        {
            if (height is { } metres && level is { } index)
            {
                placement.CheckHeight(index, metres, item.Mark, "heights");
            }
        }

        return heights.Length > 0 && heights.All(height => height is not null) ? [.. heights.Select(height => height!.Value).Distinct().Order()] : null;
    }
}
