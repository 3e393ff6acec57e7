using System.Numerics;
using System.Runtime.Intrinsics;

namespace LinkMargin.Engine.Wavefront;

/// <summary>Places across a front where what stands in it begins and ends, v, and the strips between them.</summary>
internal static class FrontEdges
{
    /// <summary>Ends closer than this are one: where walls join, rounding must leave neither a slit nor an overlap.</summary>
    internal const double SameEdge = 1e-6;

    /// <summary>The middle of a strip between edges in order, or beyond the last of them.</summary>
    internal static double Middle(ReadOnlySpan<double> edges, int strip, in FrontReach reach)
    {
        double low = strip > 0 ? edges[strip - 1] : -reach.End;
        return (low + (strip < edges.Length ? edges[strip] : reach.End)) / 2;
    }

    /// <summary>Adds an edge that is within reach.</summary>
    internal static void Add(Span<double> edges, ref int count, double v, in FrontReach reach)
    {
        if (v > -reach.End && v < reach.End)
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
        using Scratch scratch = Scratch.Open();
        int lanes = Vector512<double>.Count, whole = (edges.Length + lanes - 1) / lanes * lanes;
        Span<double> all = scratch.Of<double>(whole), sorted = scratch.Of<double>(whole);
        edges.CopyTo(all);
        all[edges.Length..].Fill(double.PositiveInfinity);
        sorted.Fill(double.NaN);

        // The place of each is the number of those below it, counted several at a time. Equal ones take one place, and those after it stay empty.
        foreach (double edge in edges)
        {
            Vector512<double> bound = Vector512.Create(edge);
            int rank = 0;
            for (int i = 0; i < whole; i += lanes)
            {
                rank += BitOperations.PopCount(Vector512.LessThan(Vector512.LoadUnsafe(ref all[i]), bound).ExtractMostSignificantBits());
            }

            sorted[rank] = edge;
        }

        int kept = 0;
        double first = double.NegativeInfinity, last = double.NegativeInfinity;
        foreach (double edge in sorted[..edges.Length])
        {
            if (double.IsNaN(edge))
            {
                continue;
            }

            if (edge - last > SameEdge)
            {
                kept++;
                first = edge;
            }

            last = edge;
            edges[kept - 1] = (first + edge) / 2;
        }

        return kept;
    }
}
