using LinkMargin.Engine.Propagation;

namespace LinkMargin.Engine.Links;

/// <summary>Places across a front where what stands in it begins and ends, v, and the strips between them.</summary>
internal static class FrontEdges
{
    /// <summary>Ends nearer to each other are one: where walls join, rounding must leave neither a slit nor an overlap.</summary>
    internal const double SameEdge = 1e-6;

    /// <summary>The middle of a strip between edges in order, or beyond the last of them.</summary>
    internal static double Middle(ReadOnlySpan<double> edges, int strip)
    {
        double low = strip > 0 ? edges[strip - 1] : -EdgeKernel.Reach;
        return (low + (strip < edges.Length ? edges[strip] : EdgeKernel.Reach)) / 2;
    }

    /// <summary>Adds an edge that is within reach.</summary>
    internal static void Add(Span<double> edges, ref int count, double v)
    {
        if (v > -EdgeKernel.Reach && v < EdgeKernel.Reach)
        {
            edges[count++] = v;
        }
    }

    /// <summary>
    /// Puts edges in order and keeps one of several in one place, halfway between the outermost of them, so that it is the same
    /// place seen from the other side; returns how many are left.
    /// </summary>
    internal static int Arrange(Span<double> edges)
    {
        // They are few, and mostly in order.
        for (int i = 1; i < edges.Length; i++)
        {
            double edge = edges[i];
            int at = i;
            for (; at > 0 && edges[at - 1] > edge; at--)
            {
                edges[at] = edges[at - 1];
            }

            edges[at] = edge;
        }

        int kept = 0;
        for (int from = 0, to; from < edges.Length; from = to)
        {
            for (to = from + 1; to < edges.Length && edges[to] - edges[to - 1] <= SameEdge; to++)
            {
            }

            edges[kept++] = (edges[from] + edges[to - 1]) / 2;
        }

        return kept;
    }
}
