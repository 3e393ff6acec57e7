using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Rooms;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using NetTopologySuite.Algorithm;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;
using NetTopologySuite.Index.Strtree;

namespace LinkMargin.Files.Plans.Walls;

/// <summary>Finds ends of walls that stop just short of another wall and so leave a room open.</summary>
internal sealed class LooseEnds
{
    private const string Kind = "loose wall ends";

    private readonly IReadOnlyList<WrittenWall> walls;
    private readonly Segment[] all;
    private readonly SegmentIndex<int> index;
    private readonly IReadOnlyList<RoomShape> rooms;
    private readonly STRtree<IPreparedGeometry> regions = new();

    /// <summary>Takes the full-height walls as written, the rooms' own walls, and all rooms, written and found.</summary>
    internal LooseEnds(IReadOnlyList<WrittenWall> fullWalls, IReadOnlyList<Segment> roomWalls, IReadOnlyList<RoomShape> rooms)
    {
        walls = fullWalls;
        this.rooms = rooms;
        all = [.. fullWalls.Select(w => w.Segment), .. roomWalls];
        index = new SegmentIndex<int>([.. Enumerable.Range(0, all.Length)], i => all[i]);
        foreach (RoomShape room in rooms)
        {
            NetTopologySuite.Geometries.Polygon polygon = NtsShapes.ToPolygon(room.Corners);
            regions.Insert(polygon.EnvelopeInternal, PreparedGeometryFactory.Prepare(polygon));
        }
    }

    /// <summary>Reports each loose end with the move that closes it.</summary>
    internal void Report(PlanProblems problems)
    {
        HashSet<(Point2, Point2)> reported = [];
        for (int i = 0; i < walls.Count && !problems.HasReportedEnough(Kind); i++)
        {
            foreach (Point2 end in new[] { all[i].Start, all[i].End })
            {
                if (!IsLoose(i, end) || Nearest(i, end) is not { } near || reported.Contains((near.Place, end)))
                {
                    continue;
                }

                reported.Add((end, near.Place));
                problems.OneOfMany(
                    Severity.Warning,
                    Kind,
                    walls[i].Mark,
                    $"{walls[i].Label(problems.Lengths)} ends at {problems.Lengths.Place(end)}, {problems.Lengths.Fine(near.Place.DistanceTo(end))} short "
                        + $"of {LabelOf(near.Wall, problems.Lengths)}: the room stays open; move the end to {problems.Lengths.Place(near.Place)} to close it");
            }
        }
    }

    private bool IsLoose(int wall, Point2 end) =>
        !index.Near(end, PlanLimits.JoinMetres).Any(i => i != wall && all[i].DistanceTo(end) <= PlanLimits.JoinMetres);

    /// <summary>The nearest place on another wall, if it is close enough to report.</summary>
    private (Point2 Place, int Wall)? Nearest(int wall, Point2 end)
    {
        double reach = rooms.Count == 0 ? double.PositiveInfinity
            : IsInRoom(end) ? PlanLimits.LooseEndInRoomMetres
            : PlanLimits.LooseEndMetres;
        IEnumerable<int> candidates = double.IsInfinity(reach) ? Enumerable.Range(0, all.Length) : index.Near(end, reach);
        (Point2 Place, int Wall)? best = null;
        double bestMetres = reach + PlanLimits.RoundingMetres;
        foreach (int i in candidates.Where(i => i != wall && !Meet(all[i], all[wall])))
        {
            double metres = all[i].DistanceTo(end);
            if (metres < bestMetres)
            {
                (best, bestMetres) = ((all[i].NearestTo(end), i), metres);
            }
        }

        return best;
    }

    private static bool Meet(Segment a, Segment b) =>
        DistanceComputer.SegmentToSegment(
            NtsShapes.ToCoordinate(a.Start),
            NtsShapes.ToCoordinate(a.End),
            NtsShapes.ToCoordinate(b.Start),
            NtsShapes.ToCoordinate(b.End)) <= PlanLimits.JoinMetres;

    private bool IsInRoom(Point2 p)
    {
        Point point = NtsShapes.ToGeometry(p);
        return regions.Query(point.EnvelopeInternal).Any(r => r.Contains(point));
    }

    private string LabelOf(int wall, LengthFormat lengths)
    {
        if (wall < walls.Count)
        {
            return walls[wall].Label(lengths);
        }

        return $"the room wall from {lengths.Place(all[wall].Start)} to {lengths.Place(all[wall].End)}";
    }
}
