using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Keys;

/// <summary>Reads places and outlines: <c>[x, y]</c>, <c>[x, y, height]</c> and lists of them.</summary>
internal static class PlaceReader
{
    /// <summary>A place on a plan; null, with an error recorded, if it is not valid.</summary>
    public static Point2? Plan(Source source, Node node, string label)
    {
        if (Numbers(source, node, label, 2, "[x, y]") is not { } pair)
        {
            return null;
        }

        double? x = ValueReader.Length(source, pair[0], $"{label} (x)", HouseLimits.Coordinate);
        double? y = ValueReader.Length(source, pair[1], $"{label} (y)", HouseLimits.Coordinate);
        return x is { } east && y is { } north ? new Point2(east, north) : null;
    }

    /// <summary>A place with its height above the level's floor; null, with an error recorded, if it is not valid.</summary>
    public static Point3? Space(Source source, Node node, string label)
    {
        if (Numbers(source, node, label, 3, "[x, y, height]") is not { } three)
        {
            return null;
        }

        double? x = ValueReader.Length(source, three[0], $"{label} (x)", HouseLimits.Coordinate);
        double? y = ValueReader.Length(source, three[1], $"{label} (y)", HouseLimits.Coordinate);
        double? z = ValueReader.Length(source, three[2], $"{label} (height)", HouseLimits.HeightOverFloor);
        return x is { } east && y is { } north && z is { } up ? new Point3(east, north, up) : null;
    }

    /// <summary>The items of a list of exactly this many numbers; null, with an error recorded, if it is not valid.</summary>
    public static IReadOnlyList<Node>? Numbers(Source source, Node node, string label, int count, string form)
    {
        if (node is not SequenceNode list)
        {
            source.Error(node.Mark, $"{label}: write {form}, not {node.Kind}");
            return null;
        }

        if (list.Items.Count == count)
        {
            return list.Items;
        }

        string remedy = list.Items.Count > count && list.Items.All(item => item is ScalarNode)
            ? "; the decimal sign is a point, a comma begins the next number"
            : "";
        source.Error(node.Mark, FormattableString.Invariant(
            $"{label}: {count} numbers are needed, {form}, but there are {list.Items.Count}{remedy}"));
        return null;
    }

    /// <summary>A list of at least this many places; null, with errors recorded, if it is not valid.</summary>
    public static IReadOnlyList<Point2>? Line(Source source, Node node, string label, int least)
    {
        if (node is not SequenceNode list || list.Items.Any(item => item is ScalarNode))
        {
            source.Error(node.Mark,
                $"{label}: write a list of places, [[x, y], [x, y], ...]{(node is SequenceNode ? "" : $", not {node.Kind}")}");
            return null;
        }

        List<Point2> points = [];
        foreach (Node item in list.Items)
        {
            if (Plan(source, item, label) is { } point)
            {
                points.Add(point);
            }
        }

        if (points.Count < list.Items.Count)
        {
            return null;
        }

        if (points.Count < least)
        {
            source.Error(node.Mark, FormattableString.Invariant($"{label}: at least {least} places are needed, but there are {points.Count}"));
            return null;
        }

        return points;
    }

    /// <summary>The corners of a rectangle written as its south-west corner and size; null if an error was recorded.</summary>
    public static IReadOnlyList<Point2>? Rectangle(MappingReader group)
    {
        Point2? corner = group.Required("corner") is { } place ? Plan(group.Source, place, "corner") : null;
        if (group.Required("size") is not { } node || Numbers(group.Source, node, "size", 2, "[east-west, north-south]") is not { } pair)
        {
            return null;
        }

        double? width = ValueReader.Length(group.Source, pair[0], "size (east-west)", HouseLimits.RoomSide);
        double? depth = ValueReader.Length(group.Source, pair[1], "size (north-south)", HouseLimits.RoomSide);
        return corner is { } c && width is { } w && depth is { } d
            ? [c, new Point2(c.X + w, c.Y), new Point2(c.X + w, c.Y + d), new Point2(c.X, c.Y + d)]
            : null;
    }
}
