using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Levels;

/// <summary>Reads the walls of one level that are written as polylines.</summary>
internal sealed class WallReader(Source source, MaterialReader materials, double levelHeight)
{
    /// <summary>How many walls could not be read.</summary>
    public int Unread { get; private set; }

    /// <summary>Reads all walls that are readable.</summary>
    public IReadOnlyList<WallDraft> ReadAll(MappingReader level)
    {
        Names names = new(source, "a wall on this level");
        List<WallDraft> walls = [];
        IReadOnlyList<Node> items = level.OptionalItems("walls");
        Unread = items.Count;
        foreach (Node item in items)
        {
            if (MappingReader.Open(source, item, "a wall", HouseKeys.Wall) is { } group && Read(group, names) is { } wall)
            {
                walls.Add(wall);
                Unread--;
            }
        }

        return walls;
    }

    private WallDraft? Read(MappingReader group, Names names)
    {
        string? name = group.OptionalName("name");
        if (name is not null)
        {
            names.Take(name, group.MarkOf("name"));
        }

        Material material = materials.RequiredPanel(group, "material");
        double from = group.OptionalLength("from", HouseLimits.HeightOverFloor) ?? 0;
        double? height = group.OptionalLength("height", HouseLimits.PanelHeight);
        if (from + (height ?? HouseLimits.PanelHeight.Least) > levelHeight + HouseLimits.SameHeight)
        {
            source.Error(group.MarkOf(group.Has("height") ? "height" : "from"), 
                $"this wall reaches {source.Lengths.Exact(from + (height ?? 0))} above the floor, "
                    + $"and the level is {source.Lengths.Exact(levelHeight)} high; fix 'from', 'height' or the level's height");
            return null;
        }

        IReadOnlyList<Point2>? along = group.Required("along") is { } node ? PlaceReader.Line(source, node, "along", 2) : null;
        double? top = height is { } own ? Math.Min(from + own, levelHeight) : null;
        return along is null ? null : new WallDraft(name, along, material, from, top, group.Mark);
    }
}
