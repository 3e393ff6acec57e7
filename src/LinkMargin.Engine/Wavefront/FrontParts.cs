using System.Numerics;
using System.Runtime.Intrinsics;

namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// Stretches of a front, and what passes between and through them. A stretch is one amplitude from bottom to top, or several above
/// each other: their level edges are summed, all at once, only if enough may pass by the greatest amplitudes.
/// </summary>
internal ref struct FrontParts
{
    private readonly Span<double> lows;
    private readonly Span<double> highs;
    private readonly Span<double> amplitudes; // of a part with level edges the greatest of its strips, until they are summed
    private readonly Span<int> firstLevel; // of each part, its first level edge; one longer
    private readonly Span<double> levels; // level edges, part by part
    private readonly Span<double> strips; // amplitudes between them, from below: one more for each part
    private readonly FrontReach reach;
    private int count;

    /// <summary>Makes room.</summary>
    /// <param name="scratch">Where to take it from.</param>
    /// <param name="pieces">How many pieces there are; those that share a plane are cut into at most twice as many parts.</param>
    /// <param name="shared">How many of them share a plane.</param>
    /// <param name="reach">How far out the front reaches.</param>
    internal FrontParts(in Scratch scratch, int pieces, int shared, in FrontReach reach)
    {
        this.reach = reach;
        int parts = 2 * pieces, edges = (2 * pieces) + (4 * shared * shared);
        lows = scratch.Of<double>(parts);
        highs = scratch.Of<double>(parts);
        amplitudes = scratch.Of<double>(parts);
        levels = scratch.Of<double>(edges);
        strips = scratch.Of<double>(edges + parts);
        firstLevel = scratch.Of<int>(parts + 1);
        firstLevel[0] = 0;
    }

    /// <summary>Begins a part between two ends, v.</summary>
    /// <returns>Its number.</returns>
    internal int Begin(double low, double high)
    {
        lows[count] = low;
        highs[count] = high;
        amplitudes[count] = 0;
        firstLevel[count + 1] = firstLevel[count];
        return count;
    }

    /// <summary>Adds an amplitude from the last level edge up to another.</summary>
    internal readonly void Over(int part, double amplitude, double edge)
    {
        strips[firstLevel[part + 1] + part] = amplitude;
        amplitudes[part] = Math.Max(amplitudes[part], amplitude);
        levels[firstLevel[part + 1]++] = edge;
    }

    /// <summary>Ends the part with the amplitude above its last level edge.</summary>
    internal void End(int part, double amplitude)
    {
        strips[firstLevel[part + 1] + part] = amplitude;
        amplitudes[part] = Math.Max(amplitudes[part], amplitude);
        count++;
    }

    /// <summary>Mean power of the strips between the parts' upright edges, each by all that stands in it.</summary>
    /// <param name="beside">Amplitude where nothing stands: 1, or 0 for a mirror, whose parts stand beside each other.</param>
    /// <param name="least">Power that is no more than this is returned as 0.</param>
    internal readonly double MeanPower(double beside, double least)
    {
        using Scratch scratch = Scratch.Open();
        Span<double> edges = scratch.Of<double>(2 * count);
        int many = 0;
        for (int p = 0; p < count; p++)
        {
            if (p == 0 || lows[p] != highs[p - 1])
            {
                FrontEdges.Add(edges, ref many, lows[p], reach); // unless the part before ends here: they are in order
            }

            FrontEdges.Add(edges, ref many, highs[p], reach);
        }

        edges = edges[..FrontEdges.Arrange(edges[..many])];
        int whole = StripSum.WholeVectors(edges.Length + 1);
        Span<double> middles = scratch.Of<double>(whole), through = scratch.Of<double>(whole);
        for (int s = 0; s <= edges.Length; s++)
        {
            middles[s] = FrontEdges.Middle(edges, s, reach);
        }

        middles[(edges.Length + 1)..].Fill(double.PositiveInfinity);
        Multiply(middles, through, beside);

        // No mean is above what the strip of the greatest amplitude alone would give.
        double most = 0;
        foreach (double strip in through[..(edges.Length + 1)])
        {
            most = Math.Max(most, strip);
        }

        if (most * most <= least)
        {
            return 0;
        }

        int level = count == 0 ? 0 : firstLevel[count], upright = StripSum.WholeVectors(level);
        int room = upright + StripSum.WholeVectors(edges.Length);
        Span<double> inStep = scratch.Of<double>(room), scattered = scratch.Of<double>(room);
        scattered.Clear();
        levels[..level].CopyTo(scattered);
        edges.CopyTo(scattered[upright..]);
        StripSum.Waves(inStep, scattered, reach);
        if (level > 0)
        {
            SumLevels(inStep, scattered);
            Multiply(middles, through, beside);
        }

        return StripSum.MeanPower(edges, through[..(edges.Length + 1)], inStep[upright..], scattered[upright..]);
    }

    // The amplitudes of parts with level edges.
    private readonly void SumLevels(Span<double> inStep, Span<double> scattered)
    {
        for (int p = 0; p < count; p++)
        {
            int first = firstLevel[p], many = firstLevel[p + 1] - first;
            if (many > 0)
            {
                amplitudes[p] = Math.Sqrt(StripSum.MeanPower(
                    levels.Slice(first, many), strips.Slice(first + p, many + 1), inStep.Slice(first, many), scattered.Slice(first, many)));
            }
        }
    }

    // What passes each strip.
    private readonly void Multiply(ReadOnlySpan<double> middles, Span<double> through, double beside)
    {
        through.Fill(beside);
        for (int p = 0; p < count; p++)
        {
            Vector256<double> low = Vector256.Create(lows[p]), high = Vector256.Create(highs[p]);
            Vector256<double> amplitude = Vector256.Create(amplitudes[p]);
            for (int s = 0; s < through.Length; s += 4)
            {
                Vector256<double> at = Vector256.LoadUnsafe(in middles[s]), so = Vector256.LoadUnsafe(ref through[s]);
                Vector256<double> passes = Vector256.LessThan(low, at) & Vector256.LessThan(at, high);
                Vector256.ConditionalSelect(passes, beside == 0 ? amplitude : so * amplitude, so).StoreUnsafe(ref through[s]);
            }
        }
    }
}

/// <summary>Places across a front where what stands in it begins and ends, v, and the strips between them.</summary>
internal static class FrontEdges
{
    /// <summary>Ends closer than this are one: where walls join, rounding must leave neither a slit nor an overlap.</summary>
    internal const double SameEdge = 1e-6;

    // Up to so many are sorted one by one.
    private const int Few = 12;

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
        if (edges.Length > Few)
        {
            SortByRank(edges);
        }
        else
        {
            Sort(edges);
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

    // Mostly they are in order.
    private static void Sort(Span<double> edges)
    {
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
    }

    // The place of each is the number of those below it, counted several at a time.
    private static void SortByRank(Span<double> edges)
    {
        using Scratch scratch = Scratch.Open();
        int lanes = Vector512<double>.Count, whole = (edges.Length + lanes - 1) / lanes * lanes;
        Span<double> all = scratch.Of<double>(whole), sorted = scratch.Of<double>(edges.Length);
        edges.CopyTo(all);
        all[edges.Length..].Fill(double.PositiveInfinity);
        sorted.Fill(double.NaN);
        foreach (double edge in edges)
        {
            Vector512<double> bound = Vector512.Create(edge);
            int rank = 0;
            for (int i = 0; i < whole; i += lanes)
            {
                rank += BitOperations.PopCount(Vector512.LessThan(Vector512.LoadUnsafe(ref all[i]), bound).ExtractMostSignificantBits());
            }

            while (!double.IsNaN(sorted[rank]))
            {
                rank++; // an equal one is there already
            }

            sorted[rank] = edge;
        }

        sorted.CopyTo(edges);
    }
}
