using System.Runtime.Intrinsics;

namespace LinkMargin.Engine.Wavefront;

/// <summary>Stretches of a front, each with one amplitude from bottom to top, and what passes between and through them.</summary>
/// <param name="numbers">As many numbers as there is <see cref="Room"/> for.</param>
internal ref struct FrontParts(Span<double> numbers)
{
    private readonly Span<double> numbers = numbers; // low ends, high ends, amplitudes

    private int Count { get; set; }

    /// <summary>How many numbers the parts of so many pieces take: those that share a plane are cut into at most twice as many.</summary>
    internal static int Room(int pieces) => 3 * 2 * pieces;

    /// <summary>Adds a stretch between two ends, v.</summary>
    internal void Add(double low, double high, double amplitude)
    {
        numbers[Count] = low;
        numbers[(numbers.Length / 3) + Count] = high;
        numbers[(numbers.Length / 3 * 2) + Count] = amplitude;
        Count++;
    }

    /// <summary>Mean power of the strips between the parts' upright edges, each by all that stands in it.</summary>
    /// <param name="beside">Amplitude where nothing stands: 1, or 0 for a mirror, whose parts stand beside each other.</param>
    /// <param name="least">Power that is no more than this is returned as 0.</param>
    internal readonly double MeanPower(double beside, double least)
    {
        ReadOnlySpan<double> lows = numbers[..Count], highs = numbers.Slice(numbers.Length / 3, Count);
        ReadOnlySpan<double> amplitudes = numbers.Slice(numbers.Length / 3 * 2, Count);
        using Scratch scratch = Scratch.Open();
        Span<double> edges = scratch.Of<double>(2 * Count);
        int count = 0;
        for (int p = 0; p < Count; p++)
        {
            if (p == 0 || lows[p] != highs[p - 1])
            {
                FrontEdges.Add(edges, ref count, lows[p]); // not where the part before ends: they stand in order
            }

            FrontEdges.Add(edges, ref count, highs[p]);
        }

        edges = edges[..FrontEdges.Arrange(edges[..count])];
        int strips = edges.Length + 1, whole = (strips + 3) & ~3;
        Span<double> middles = scratch.Of<double>(whole);
        Span<double> through = scratch.Of<double>(whole);
        for (int s = 0; s < strips; s++)
        {
            middles[s] = FrontEdges.Middle(edges, s);
        }

        middles[strips..].Fill(double.PositiveInfinity);
        through.Fill(beside);
        for (int p = 0; p < Count; p++)
        {
            Vector256<double> low = Vector256.Create(lows[p]), high = Vector256.Create(highs[p]);
            Vector256<double> amplitude = Vector256.Create(amplitudes[p]);
            for (int s = 0; s < whole; s += 4)
            {
                Vector256<double> at = Vector256.LoadUnsafe(ref middles[s]), so = Vector256.LoadUnsafe(ref through[s]);
                Vector256<double> passes = Vector256.LessThan(low, at) & Vector256.LessThan(at, high);
                Vector256.ConditionalSelect(passes, beside == 0 ? amplitude : so * amplitude, so).StoreUnsafe(ref through[s]);
            }
        }

        // No mean is above what the clearest strip alone would give.
        double most = 0;
        foreach (double strip in through[..strips])
        {
            most = Math.Max(most, strip);
        }

        return most * most <= least ? 0 : StripSum.MeanPower(edges, through[..strips]);
    }
}

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
