using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;
using NtsPolygon = NetTopologySuite.Geometries.Polygon;

namespace LinkMargin.Files.Plans.Rooms;

/// <summary>
/// Finds edges of different rooms that run side by side with no more than a wall's thickness between them. People measure
/// the clear size of rooms, so the two faces of one wall arrive as two edges a small distance apart.
/// </summary>
internal sealed class FacingEdges
{
    /// <summary>Below this covered share of the strip between two edges, the cover is only rounding.</summary>
    private const double LeastCover = PlanLimits.LeastStripCover;

    /// <summary>Above this covered share another room fills the strip, and the two edges are unrelated.</summary>
    private const double FullCover = 0.9;

    private readonly IReadOnlyList<RoomShape> rooms;
    private readonly IReadOnlyList<RoomEdge> edges;
    private readonly PlanProblems problems;
    private readonly NtsPolygon[] polygons;
    private readonly STRtree<int> polygonTree = new();

    private FacingEdges(IReadOnlyList<RoomShape> rooms, IReadOnlyList<RoomEdge> edges, PlanProblems problems)
    {
        this.rooms = rooms;
        this.edges = edges;
        this.problems = problems;
        polygons = [.. rooms.Select(r => NtsShapes.ToPolygon(r.Corners))];
        for (int i = 0; i < polygons.Length; i++)
        {
            polygonTree.Insert(polygons[i].EnvelopeInternal, i);
        }
    }

    /// <summary>Every pair of facing edges, including those that coincide.</summary>
    internal static List<FacingPair> Find(
        IReadOnlyList<RoomShape> rooms, IReadOnlyList<RoomEdge> edges, SegmentIndex<int> index, PlanProblems problems)
    {
        FacingEdges finder = new(rooms, edges, problems);
        List<FacingPair> pairs = [];
        for (int a = 0; a < edges.Count; a++)
        {
            foreach (int b in index.Near(edges[a].Segment, PlanLimits.ThickestWallMetres + PlanLimits.RoundingMetres))
            {
                if (b > a && edges[a].Room != edges[b].Room && finder.Pair(a, b) is { } pair)
                {
                    pairs.Add(pair);
                }
            }
        }

        return pairs;
    }

    private FacingPair? Pair(int a, int b)
    {
        Segment e = edges[a].Segment, f = edges[b].Segment;
        if (Point2.Dot(e.Direction, f.Direction) >= 0 || !e.IsParallelTo(f))
        {
            return null;
        }

        // The room is on the left of its edge, so the gap is measured to the right.
        Span common = e.Shadow(f).Meet(new Span(0, e.Length));
        double from = -AcrossAt(e, f, common.From), to = -AcrossAt(e, f, common.To);
        double gap = (from + to) / 2;
        bool isFacing = common.Length > Math.Max(gap, PlanLimits.JoinMetres)
            && Math.Max(from, to) <= PlanLimits.ThickestWallMetres + PlanLimits.RoundingMetres
            && Math.Min(from, to) >= -PlanLimits.FacingOverlapMetres - PlanLimits.RoundingMetres;
        return isFacing && IsStripEmpty(edges[a], edges[b], common, from, to) ? new FacingPair(a, b, gap) : null;
    }

    private static double AcrossAt(Segment e, Segment f, double along)
    {
        double a0 = e.Along(f.Start), a1 = e.Along(f.End);
        double share = (along - a0) / (a1 - a0);
        return e.Across(f.Start) + (share * (e.Across(f.End) - e.Across(f.Start)));
    }

    private bool IsStripEmpty(RoomEdge edge, RoomEdge other, Span common, double gapFrom, double gapTo)
    {
        // The strip is shrunk by the corner tolerance, so that the rooms beside it do not count as in it.
        const double Inset = PlanLimits.JoinMetres;
        Segment e = edge.Segment;
        if (Math.Min(gapFrom, gapTo) <= 3 * Inset || common.Length <= 3 * Inset)
        {
            return true;
        }

        NtsPolygon strip = NtsShapes.StripBeside(e, common, gapFrom, gapTo, Inset);
        Envelope box = strip.EnvelopeInternal;
        double covered = 0;
        SortedSet<string> between = [];
        foreach (int i in polygonTree.Query(box).Order())
        {
            double area = strip.Intersection(polygons[i]).Area;
            covered += area;
            if (area > 0)
            {
                between.Add(rooms[i].Name);
            }
        }

        double share = covered / strip.Area;
        if (share is > LeastCover and < FullCover)
        {
            problems.OneOfMany(
                Severity.Warning,
                "rooms a little apart with something between them",
                rooms[other.Room].Mark,
                $"rooms {Quote.Of(rooms[edge.Room].Name)} and {Quote.Of(rooms[other.Room].Name)} are "
                    + $"{problems.Lengths.Exact((gapFrom + gapTo) / 2)} apart with {PlanText.List(between)} partly between them, which makes two walls; make them share "
                    + "an edge for a single wall");
        }

        return share <= LeastCover;
    }
}

/// <summary>Two edges of different rooms that are the two faces of one wall.</summary>
/// <param name="A">Position of one edge among the level's edges.</param>
/// <param name="B">Position of the other.</param>
/// <param name="GapMetres">Mean distance between them; negative if the rooms overlap slightly.</param>
internal readonly record struct FacingPair(int A, int B, double GapMetres);
