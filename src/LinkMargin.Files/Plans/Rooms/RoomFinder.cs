using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Shapes;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;
using NetTopologySuite.Index.Strtree;
using NetTopologySuite.Noding;
using NetTopologySuite.Noding.Snap;
using NetTopologySuite.Operation.Polygonize;
using NtsPolygon = NetTopologySuite.Geometries.Polygon;

namespace LinkMargin.Files.Plans.Rooms;

/// <summary>Finds the closed regions that walls enclose and no written room covers. Openings count as closed.</summary>
internal static class RoomFinder
{
    /// <summary>
    /// The regions as rooms, numbered after the written ones. If one lies inside another the inner comes first, so
    /// that the first room to contain a point is the right one; otherwise west to east, then south to north.
    /// </summary>
    internal static IReadOnlyList<RoomShape> Find(IReadOnlyList<RoomShape> written, IReadOnlyList<Segment> closing)
    {
        NtsPolygon[] regions = [.. Regions(closing).Where(r => r.Area > PlanLimits.LeastFoundRoomSquareMetres)];
        NtsPolygon[] free = [.. Uncovered(regions, written)
            .OrderBy(r => r.NumInteriorRings > 0 ? r.Area : 0)
            .ThenBy(r => r.EnvelopeInternal.MinX)
            .ThenBy(r => r.EnvelopeInternal.MinY)];
        HashSet<string> taken = [.. written.Select(r => r.Name)];
        List<RoomShape> rooms = [];
        int number = 0;
        foreach (NtsPolygon region in free)
        {
            string name;
            do
            {
                name = FormattableString.Invariant($"room {++number}");
            }
            while (taken.Contains(name));

            rooms.Add(ToShape(region, written.Count + rooms.Count, name));
        }

        return rooms;
    }

    private static RoomShape ToShape(NtsPolygon region, int index, string name)
    {
        RoomEdge[] holes =
        [
            .. region.InteriorRings
                .SelectMany(ring => RoomShape.EdgesOf(index, RoomShapes.Straighten(Open(ring))))
                .Select(e => new RoomEdge(index, e.Segment.Reversed, e.Written.Reversed)),
        ];
        return new RoomShape(
            index, name, default, RoomShape.EdgesOf(index, RoomShapes.Straighten(Open(region.ExteriorRing))))
        { HoleEdges = holes };
    }

    private static Point2[] Open(LineString ring) => [.. ring.Coordinates[..^1].Select(NtsShapes.ToPoint)];

    private static IEnumerable<NtsPolygon> Regions(IReadOnlyList<Segment> closing)
    {
        if (closing.Count == 0)
        {
            return [];
        }

        SnappingNoder noder = new(PlanLimits.JoinMetres);
        noder.ComputeNodes(
            [.. closing.Select(s => new NodedSegmentString(
                [NtsShapes.ToCoordinate(s.Start), NtsShapes.ToCoordinate(s.End)], null))]);
        HashSet<Segment> pieces = [];
        foreach (ISegmentString line in noder.GetNodedSubstrings())
        {
            Coordinate[] points = line.Coordinates;
            for (int i = 1; i < points.Length; i++)
            {
                Segment piece = new(NtsShapes.ToPoint(points[i - 1]), NtsShapes.ToPoint(points[i]));
                if (piece.Start != piece.End)
                {
                    pieces.Add(piece.Canonical);
                }
            }
        }

        Polygonizer polygonizer = new();
        foreach (Segment piece in pieces)
        {
            polygonizer.Add(NtsShapes.ToLine(piece));
        }

        return polygonizer.GetPolygons().OfType<NtsPolygon>();
    }

    private static IEnumerable<NtsPolygon> Uncovered(NtsPolygon[] regions, IReadOnlyList<RoomShape> written)
    {
        STRtree<IPreparedGeometry> rooms = new();
        foreach (RoomShape room in written)
        {
            NtsPolygon polygon = NtsShapes.ToPolygon(room.Corners);
            rooms.Insert(polygon.EnvelopeInternal, PreparedGeometryFactory.Prepare(polygon));
        }

        return regions.Where(region =>
        {
            Point inside = region.InteriorPoint;
            return !rooms.Query(inside.EnvelopeInternal).Any(room => room.Contains(inside));
        });
    }
}
