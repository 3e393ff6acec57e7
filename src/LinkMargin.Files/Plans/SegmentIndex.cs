using LinkMargin.Engine.Geometry;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;

namespace LinkMargin.Files.Plans;

/// <summary>Finds the things that lie near a stretch or a point. Answers come in the order the things were given.</summary>
internal sealed class SegmentIndex<T>
{
    private readonly IReadOnlyList<T> items;
    private readonly STRtree<int> tree = new();

    /// <summary>Indexes things by the stretch each takes up.</summary>
    internal SegmentIndex(IReadOnlyList<T> items, Func<T, Segment> segmentOf)
    {
        this.items = items;
        for (int i = 0; i < items.Count; i++)
        {
            tree.Insert(NtsShapes.EnvelopeOf(segmentOf(items[i])), i);
        }

        tree.Build();
    }

    /// <summary>Things whose box comes within reach of a stretch's box.</summary>
    internal IEnumerable<T> Near(Segment segment, double reachMetres) => Query(NtsShapes.EnvelopeOf(segment), reachMetres);

    /// <summary>Things whose box comes within reach of a point.</summary>
    internal IEnumerable<T> Near(Point2 p, double reachMetres) => Query(new Envelope(p.X, p.X, p.Y, p.Y), reachMetres);

    private IEnumerable<T> Query(Envelope box, double reachMetres)
    {
        box.ExpandBy(reachMetres);
        return tree.Query(box).Order().Select(i => items[i]);
    }
}
