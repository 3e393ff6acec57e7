using LinkMargin.Engine.Geometry;
using NetTopologySuite;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;
using NtsPolygon = NetTopologySuite.Geometries.Polygon;

namespace LinkMargin.Files.Plans.Shapes;

/// <summary>Converts our points and segments to the geometry library's shapes.</summary>
internal static class NtsShapes
{
    /// <summary>
    /// Uses the library's newer overlay: the older one, its default, throws an exception if edges cross within
    /// rounding of a corner.
    /// </summary>
    private static readonly GeometryFactory Factory = new NtsGeometryServices(GeometryOverlay.NG).CreateGeometryFactory();

    /// <summary>A point.</summary>
    internal static Coordinate ToCoordinate(Point2 p) => new(p.X, p.Y);

    /// <summary>A point back.</summary>
    internal static Point2 ToPoint(Coordinate c) => new(c.X, c.Y);

    /// <summary>The corners as a closed ring of coordinates.</summary>
    internal static Coordinate[] ToRing(IEnumerable<Point2> corners)
    {
        Coordinate[] open = [.. corners.Select(ToCoordinate)];
        return [.. open, open[0].Copy()];
    }

    /// <summary>A polygon from at least three corners.</summary>
    internal static NtsPolygon ToPolygon(IEnumerable<Point2> corners) => Factory.CreatePolygon(ToRing(corners));

    /// <summary>A line with one segment.</summary>
    internal static LineString ToLine(Segment s) => Factory.CreateLineString([ToCoordinate(s.Start), ToCoordinate(s.End)]);

    /// <summary>A point as a geometry.</summary>
    internal static Point ToGeometry(Point2 p) => Factory.CreatePoint(ToCoordinate(p));

    /// <summary>The strip to the right of a segment, shrunk on all sides.</summary>
    /// <param name="e">The segment.</param>
    /// <param name="part">Which part of it, metres from its start.</param>
    /// <param name="widthFrom">Width of the strip where the part starts, metres.</param>
    /// <param name="widthTo">Width where it ends, metres.</param>
    /// <param name="inset">How far it is shrunk, metres.</param>
    internal static NtsPolygon StripBeside(Segment e, Span part, double widthFrom, double widthTo, double inset)
    {
        Point2 start = e.PointAt(part.From + inset), end = e.PointAt(part.To - inset);
        return ToPolygon(
        [
            start + (inset * e.Outward),
            start + ((widthFrom - inset) * e.Outward),
            end + ((widthTo - inset) * e.Outward),
            end + (inset * e.Outward),
        ]);
    }

    /// <summary>The bounding box of a segment.</summary>
    internal static Envelope EnvelopeOf(Segment s) => new(s.Start.X, s.End.X, s.Start.Y, s.End.Y);
}

/// <summary>Finds things near a segment or a point. Results keep the order of the things.</summary>
internal sealed class SegmentIndex<T>
{
    private readonly IReadOnlyList<T> items;
    private readonly STRtree<int> tree = new();

    /// <summary>Indexes things by their segments.</summary>
    internal SegmentIndex(IReadOnlyList<T> items, Func<T, Segment> segmentOf)
    {
        this.items = items;
        for (int i = 0; i < items.Count; i++)
        {
            tree.Insert(NtsShapes.EnvelopeOf(segmentOf(items[i])), i);
        }

        tree.Build();
    }

    /// <summary>Things whose box is within reach of a segment's box.</summary>
    internal IEnumerable<T> Near(Segment segment, double reachMetres) => Query(NtsShapes.EnvelopeOf(segment), reachMetres);

    /// <summary>Things whose box is within reach of a point.</summary>
    internal IEnumerable<T> Near(Point2 p, double reachMetres) => Query(new Envelope(p.X, p.X, p.Y, p.Y), reachMetres);

    private IEnumerable<T> Query(Envelope box, double reachMetres)
    {
        box.ExpandBy(reachMetres);
        return tree.Query(box).Order().Select(i => items[i]);
    }
}
