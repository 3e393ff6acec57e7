using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Rooms;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;
using NtsPolygon = NetTopologySuite.Geometries.Polygon;

namespace LinkMargin.Files.Plans.Walls;

/// <summary>
/// Finds strips between two rooms that are too wide for one wall and too narrow to be intended: with nothing written there
/// they are outdoors, between two outer walls. Usually a room was measured or placed wrongly.
/// </summary>
internal sealed class OutdoorStrips
{
    private const string Kind = "strips of outdoors between rooms";

    private readonly IReadOnlyList<RoomShape> written;
    private readonly IReadOnlyList<WrittenWall> walls;
    private readonly PlanProblems problems;
    private readonly NtsPolygon[] polygons;
    private readonly STRtree<int> tree = new();

    /// <summary>Prepares the search.</summary>
    /// <param name="written">Written rooms, as laid out.</param>
    /// <param name="found">Rooms enclosed by walls and other rooms.</param>
    /// <param name="walls">Written walls.</param>
    /// <param name="problems">Where strips are reported.</param>
    internal OutdoorStrips(
        IReadOnlyList<RoomShape> written, IReadOnlyList<RoomShape> found, IReadOnlyList<WrittenWall> walls, PlanProblems problems)
    {
        (this.written, this.walls, this.problems) = (written, walls, problems);
        polygons = [.. written.Concat(found).Select(room => NtsShapes.ToPolygon(room.Corners))];
        for (int i = 0; i < polygons.Length; i++)
        {
            tree.Insert(polygons[i].EnvelopeInternal, i);
        }

        tree.Build();
    }

    /// <summary>Reports each pair of rooms separated by such a strip, once.</summary>
    internal void Report()
    {
        // The edges of a strip face each other over more than its width, so short edges bound none.
        RoomEdge[] edges = [.. written.SelectMany(room => room.Edges).Where(edge => edge.Segment.Length > PlanLimits.NarrowestStripMetres)];
        var index = new SegmentIndex<int>([.. Enumerable.Range(0, edges.Length)], i => edges[i].Segment);
        HashSet<(int, int)> reported = [];
        for (int a = 0; a < edges.Length && !problems.HasReportedEnough(Kind); a++)
        {
            foreach (int b in index.Near(edges[a].Segment, PlanLimits.WidestStripMetres + PlanLimits.RoundingMetres))
            {
                if (b > a && edges[a].Room != edges[b].Room && WidthBetween(edges[a].Segment, edges[b].Segment) is { } width
                    && reported.Add((edges[a].Room, edges[b].Room)))
                {
                    RoomShape one = ShapeOf(edges[a]), other = ShapeOf(edges[b]);
                    problems.OneOfMany(
                        Severity.Warning,
                        Kind,
                        other.Mark,
                        $"rooms {Quote.Of(one.Name)} and {Quote.Of(other.Name)} are {problems.Lengths.Exact(width)} apart with nothing between, "
                            + "so the strip is outdoors with an outer wall on either side; move or resize a room so that they share an edge, or write the strip as a room");
                }
            }
        }
    }

    private RoomShape ShapeOf(RoomEdge edge) => written.First(room => room.Index == edge.Room);

    // Width of the outdoor strip between two edges, metres; null if there is none.
    private double? WidthBetween(Segment e, Segment f)
    {
        if (Point2.Dot(e.Direction, f.Direction) >= 0 || !e.IsParallelTo(f))
        {
            return null;
        }

        // The room is on the left of its edge, so the strip is on the right.
        Span common = e.Shadow(f).Meet(new Span(0, e.Length));
        double width = -(e.Across(f.Start) + e.Across(f.End)) / 2;
        bool isStrip = width >= PlanLimits.NarrowestStripMetres - PlanLimits.RoundingMetres
            && width <= PlanLimits.WidestStripMetres + PlanLimits.RoundingMetres
            && common.Length > width;
        return isStrip && IsOutdoors(e, common, width) ? width : null;
    }

    private bool IsOutdoors(Segment e, Span common, double width)
    {
        if (IsInARoom(e.PointAt(common.Middle) + (width / 2 * e.Outward)))
        {
            return false; // the usual case, and a cheap test
        }

        // Shrunk on all sides by the corner tolerance, so that the bounds of the strip are not in it.
        NtsPolygon strip = NtsShapes.StripBeside(e, common, width, width, PlanLimits.JoinMetres);
        Envelope box = strip.EnvelopeInternal;
        return !walls.Any(wall => box.Intersects(NtsShapes.EnvelopeOf(wall.Segment)) && strip.Intersects(NtsShapes.ToLine(wall.Segment)))
            && tree.Query(box).Order().Sum(i => strip.Intersection(polygons[i]).Area) <= PlanLimits.LeastStripCover * strip.Area;
    }

    private bool IsInARoom(Point2 place)
    {
        Point point = NtsShapes.ToGeometry(place);
        return tree.Query(point.EnvelopeInternal).Any(i => polygons[i].Contains(point));
    }
}
