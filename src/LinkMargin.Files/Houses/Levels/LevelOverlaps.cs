using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;
using NetTopologySuite.Index.Strtree;
using NtsPolygon = NetTopologySuite.Geometries.Polygon;

namespace LinkMargin.Files.Houses.Levels;

/// <summary>Finds levels that lie above no other, as when upstairs is drawn elsewhere on the paper.</summary>
internal static class LevelOverlaps
{
    /// <summary>Reports each level above the lowest that shares no floor area with any level below it.</summary>
    public static void Report(IReadOnlyList<LevelDraft> drafts, IReadOnlyList<Level> levels, Source source)
    {
        var trees = new List<STRtree<NtsPolygon>>();
        for (int i = 0; i < levels.Count; i++)
        {
            if (!drafts[i].IsOutlineKnown || levels[i].Rooms.Count == 0)
            {
                return; // an unreadable room may be the one that overlaps
            }

            NtsPolygon[] rooms = [.. levels[i].Rooms.Select(room => NtsShapes.ToPolygon(room.Outline.Corners))];
            if (i > 0 && !trees.Any(below => Overlaps(rooms, below)))
            {
                Level level = levels[i], below = levels[i - 1];
                source.Warning(
                    drafts[i].Mark,
                    $"level {Quote.Of(level.Name)} is not above any room of a lower level: it covers {Extent(level, source)}, and {Quote.Of(below.Name)} "
                        + $"covers {Extent(below, source)}; measure every level from the same corner of the house");
            }

            var tree = new STRtree<NtsPolygon>();
            foreach (NtsPolygon room in rooms)
            {
                tree.Insert(room.EnvelopeInternal, room);
            }

            tree.Build();
            trees.Add(tree);
        }
    }

    private static bool Overlaps(NtsPolygon[] rooms, STRtree<NtsPolygon> below)
    {
        double area = 0;
        return rooms.Any(room => below.Query(room.EnvelopeInternal).Any(other =>
        {
            area += room.Intersection(other).Area;
            return area > HouseLimits.LeastLevelOverlap;
        }));
    }

    private static string Extent(Level level, Source source)
    {
        Point2 least = new(level.Rooms.Min(r => r.Outline.Least.X), level.Rooms.Min(r => r.Outline.Least.Y));
        Point2 greatest = new(level.Rooms.Max(r => r.Outline.Greatest.X), level.Rooms.Max(r => r.Outline.Greatest.Y));
        return $"{source.Lengths.Place(least)} to {source.Lengths.Place(greatest)}";
    }
}
