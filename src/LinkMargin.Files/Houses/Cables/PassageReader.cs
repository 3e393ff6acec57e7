using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Houses.Placement;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Cables;

/// <summary>Reads where a cable can pass without drilling.</summary>
/// <param name="placement">Levels and rooms.</param>
/// <param name="kinds">The kinds of cable, by name.</param>
internal sealed class PassageReader(PlacementContext placement, IReadOnlyDictionary<string, CableKind> kinds)
{
    private readonly Source source = placement.Source;

    /// <summary>Reads one passage.</summary>
    public Passage? Read(MappingReader group, string name)
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

        int bends = WholeNumber.Optional(source, group, "bends", HouseLimits.Bends) ?? 0;
        List<CableKind> holds = [];
        IReadOnlyList<Node> held = group.OptionalItems("holds");
        TooMany.Check(source, group, "holds", held.Count, HouseLimits.MostHeld);
        foreach (Node item in held.Take(HouseLimits.MostHeld))
        {
            if (ValueReader.TryChoose(source, item, "holds", kinds, "a kind of cable", "cables.yaml", out CableKind? kind))
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
            source.Error(group.Mark, $"the passage {Quote.Of(name)} connects nothing: both ends are at the same place; write two 'levels', or its other end as 'to'");
        }

        foreach ((int level, Point2 at) in new[] { (levels[0], start), (levels[1], end) }.Where(pair => !IsInRoom(pair.Item1, pair.Item2)).Distinct())
        {
            source.Error(group.MarkOf(at == start || !group.Has("to") ? "from" : "to"),
                $"the passage {Quote.Of(name)} connects nothing on the level {Quote.Of(placement.NameOf(level))}: {source.Lengths.Place(at)} is in no room there; fix the place or 'levels'");
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

    private bool IsInRoom(int level, Point2 at) =>
        placement.RoomsOf(level).Count == 0 || placement.RoomsOf(level).Any(room => room.Outline.DepthOf(at) >= -HouseLimits.PassageAside);
}
