using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;
using NetTopologySuite.Index.Strtree;

namespace LinkMargin.Files.Plans.Rooms;

/// <summary>Finds rooms that cover the same floor.</summary>
internal static class RoomOverlaps
{
    private const string Kind = "overlapping rooms";

    /// <summary>Reports each pair that overlaps.</summary>
    internal static void Report(IReadOnlyList<RoomShape> rooms, PlanProblems problems)
    {
        foreach ((RoomShape a, RoomShape b, double area) in Find(rooms))
        {
            problems.OneOfMany(
                Severity.Error,
                Kind,
                b.Mark,
                $"rooms {Quote.Of(a.Name)} and {Quote.Of(b.Name)} overlap by {problems.Lengths.ExactArea(area)}, where at most "
                    + $"{problems.Lengths.ExactArea(PlanLimits.OverlapSquareMetres)} is taken for rounding; move or shrink one");
            if (problems.HasReportedEnough(Kind))
            {
                return;
            }
        }
    }

    /// <summary>Each pair of rooms that overlaps by more than rounding, with the common area in square metres.</summary>
    internal static IEnumerable<(RoomShape A, RoomShape B, double Area)> Find(IReadOnlyList<RoomShape> rooms)
    {
        Polygon[] polygons = [.. rooms.Select(r => NtsShapes.ToPolygon(r.Corners))];
        STRtree<int> tree = new();
        for (int i = 0; i < polygons.Length; i++)
        {
            tree.Insert(polygons[i].EnvelopeInternal, i);
        }

        for (int i = 0; i < polygons.Length; i++)
        {
            // Boxes that only touch cannot share an area; this excludes most neighbours.
            Envelope box = polygons[i].EnvelopeInternal.Copy();
            box.ExpandBy(-PlanLimits.JoinMetres / 10);
            IPreparedGeometry? prepared = null;
            foreach (int j in tree.Query(box).Where(j => j > i).Order())
            {
                prepared ??= PreparedGeometryFactory.Prepare(polygons[i]);
                if (prepared.Intersects(polygons[j]))
                {
                    double area = polygons[i].Intersection(polygons[j]).Area;
                    if (area > PlanLimits.OverlapSquareMetres)
                    {
                        yield return (rooms[i], rooms[j], area);
                    }
                }
            }
        }
    }
}
