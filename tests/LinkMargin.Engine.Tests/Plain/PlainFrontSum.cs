using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Plain;

/// <summary>
/// Equivalence reference of <see cref="FrontSum"/>, a number at a time, to 1e-9 dB. It is the same method and shows only that
/// vectors, bounds and shared storage change nothing; whether the method is right is for
/// <see cref="Judges.FrontSumApertureTests"/> and <see cref="Judges.FrontSumTwoPlanesTests"/>.
/// </summary>
internal static class PlainFrontSum
{
    // More pieces than this on one front are rare; they get their room from the heap.
    private const int MostOnStack = 128;

    // Ends nearer to each other on the front are one: where walls join, rounding must leave neither a slit nor an overlap.
    private const double SameEdge = 1e-6;

    /// <summary>Power that passes, as a share of free space; 0 where that is no more than the least that counts.</summary>
    internal static double PowerRatio(ReadOnlySpan<Piece> pieces, LossTables losses, FrontReach reach, double least = 0)
    {
        Span<double> amplitudes = pieces.Length <= MostOnStack ? stackalloc double[pieces.Length] : new double[pieces.Length];
        for (int i = 0; i < pieces.Length; i++)
        {
            amplitudes[i] = losses.Amplitude(pieces[i]);
        }

        return PowerRatio(pieces, amplitudes, reach, least);
    }

    /// <summary>The same for amplitudes worked out before.</summary>
    internal static double PowerRatio(ReadOnlySpan<Piece> pieces, ReadOnlySpan<double> amplitudes, FrontReach reach, double least = 0)
    {
        // What takes up the whole front multiplies; only the rest has edges to sum over.
        double everywhere = 1;
        var rest = new List<int>();
        for (int i = 0; i < pieces.Length; i++)
        {
            if (SharesItsPlane(pieces, i))
            {
                rest.Add(i);
            }
            else if (pieces[i].TakesUpAll(reach))
            {
                everywhere *= amplitudes[i] * amplitudes[i];
            }
            else if (amplitudes[i] != 1)
            {
                rest.Add(i);
            }
        }

        return everywhere <= least ? 0 : everywhere * Sum(pieces, amplitudes, rest, false, reach);
    }

    /// <summary>Power that the panels of one mirror throw back, as a share of what a boundless one would.</summary>
    /// <param name="panels">The panels as the front meets them, all in one plane.</param>
    /// <param name="amplitudes">What each throws back.</param>
    /// <param name="reach">How far out the front reaches.</param>
    internal static double Reflected(ReadOnlySpan<Piece> panels, ReadOnlySpan<double> amplitudes, FrontReach reach)
    {
        return Sum(panels, amplitudes, Enumerable.Range(0, panels.Length), true, reach);
    }

    private static bool SharesItsPlane(ReadOnlySpan<Piece> pieces, int i)
    {
        ref readonly Piece piece = ref pieces[i];
        if (piece.Plane == Piece.NoPlane)
        {
            return false;
        }

        for (int j = 0; j < pieces.Length; j++)
        {
            if (pieces[j].Plane == piece.Plane && j != i)
            {
                return true;
            }
        }

        return false;
    }

    // The strips between the upright edges of some pieces, each by all planes.
    private static double Sum(ReadOnlySpan<Piece> pieces, ReadOnlySpan<double> amplitudes, IEnumerable<int> some, bool isMirror, FrontReach reach)
    {
        Span<double> edges = new double[2 * pieces.Length];
        int count = 0;
        foreach (int i in some)
        {
            AddEdge(edges, ref count, pieces[i].Low, reach);
            AddEdge(edges, ref count, pieces[i].High, reach);
        }

        edges = edges[..Arrange(edges[..count])];
        var planes = new Dictionary<int, List<int>>();
        foreach (int i in some)
        {
            int plane = pieces[i].Plane == Piece.NoPlane ? int.MaxValue - i : pieces[i].Plane;
            planes[plane] = [.. planes.GetValueOrDefault(plane, []), i];
        }

        double[] strips = new double[edges.Length + 1];
        for (int s = 0; s < strips.Length; s++)
        {
            strips[s] = isMirror ? 0 : 1;
            foreach (List<int> members in planes.Values)
            {
                double at = Middle(edges, s, reach);
                ref readonly Piece first = ref pieces[members[0]];
                double amplitude = members.Count > 1 ? Stacked(pieces, amplitudes, members.ToArray(), at, isMirror, reach)
                    : first.Low < at && first.High > at ? Alone(first, amplitudes[members[0]], isMirror ? 0 : 1, reach)
                    : -1;
                if (amplitude >= 0)
                {
                    strips[s] = isMirror ? amplitude : strips[s] * amplitude;
                }
            }
        }

        return PlainStripSum.MeanPower(edges, strips, reach);
    }

    // Amplitude of a piece that has its plane for itself: beside it is air, or for a mirror nothing.
    private static double Alone(in Piece piece, double amplitude, double beside, FrontReach reach)
    {
        bool isOpenBelow = piece.Bottom > -reach.End, isOpenAbove = piece.Top < reach.End;
        if (!isOpenBelow && !isOpenAbove)
        {
            return amplitude;
        }

        ReadOnlySpan<double> edges = [piece.Bottom, piece.Top], strips = [beside, amplitude, beside];
        int from = isOpenBelow ? 0 : 1, to = isOpenAbove ? 2 : 1;
        return Math.Sqrt(PlainStripSum.MeanPower(edges[from..to], strips[from..(to + 1)], reach));
    }

    // Amplitude of one plane's pieces in the strip at a place, from the level edges in it; below 0 where none stands there.
    // Beside the pieces is air, or for a mirror nothing.
    private static double Stacked(
        ReadOnlySpan<Piece> pieces, ReadOnlySpan<double> amplitudes, ReadOnlySpan<int> members, double at, bool isMirror, FrontReach reach)
    {
        Span<int> standing = members.Length <= MostOnStack ? stackalloc int[members.Length] : new int[members.Length];
        Span<double> edges = members.Length <= MostOnStack ? stackalloc double[2 * members.Length] : new double[2 * members.Length];
        int there = 0, count = 0;
        foreach (int i in members)
        {
            if (pieces[i].Low < at && pieces[i].High > at)
            {
                standing[there++] = i;
                AddEdge(edges, ref count, pieces[i].Bottom, reach);
                AddEdge(edges, ref count, pieces[i].Top, reach);
            }
        }

        if (there == 0)
        {
            return -1;
        }

        edges = edges[..Arrange(edges[..count])];
        Span<double> strips = members.Length <= MostOnStack ? stackalloc double[edges.Length + 1] : new double[edges.Length + 1];
        for (int s = 0; s < strips.Length; s++)
        {
            double height = Middle(edges, s, reach), amplitude = isMirror ? 0 : 1;
            foreach (int i in standing[..there])
            {
                if (pieces[i].Bottom < height && pieces[i].Top > height)
                {
                    amplitude = isMirror ? Math.Max(amplitude, amplitudes[i]) : Math.Min(amplitude, amplitudes[i]);
                }
            }

            strips[s] = amplitude;
        }

        return Math.Sqrt(PlainStripSum.MeanPower(edges, strips, reach));
    }

    private static double Middle(ReadOnlySpan<double> edges, int strip, FrontReach reach)
    {
        double low = strip > 0 ? edges[strip - 1] : -reach.End;
        return (low + (strip < edges.Length ? edges[strip] : reach.End)) / 2;
    }

    private static void AddEdge(Span<double> edges, ref int count, double v, FrontReach reach)
    {
        if (v > -reach.End && v < reach.End)
        {
            edges[count++] = v;
        }
    }

    // Puts edges in order and puts those that a chain of small steps connects half way between its ends; returns how many are left.
    private static int Arrange(Span<double> edges)
    {
        edges.Sort();
        int kept = 0;
        double first = double.NaN;
        for (int i = 0; i < edges.Length; i++)
        {
            first = i > 0 && edges[i] - edges[i - 1] <= SameEdge ? first : edges[i];
            if (i + 1 == edges.Length || !(edges[i + 1] - edges[i] <= SameEdge))
            {
                edges[kept++] = (first + edges[i]) / 2;
            }
        }

        return kept;
    }
}
