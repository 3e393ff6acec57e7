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
        int room = 2 * pieces.Length;
        Span<Part> parts = room <= MostOnStack ? stackalloc Part[room] : new Part[room];
        double everywhere = 1;
        int count = 0;
        for (int i = 0; i < pieces.Length; i++)
        {
            bool shares = SharesItsPlane(pieces, i);
            if (!shares && pieces[i].TakesUpAll(reach))
            {
                everywhere *= amplitudes[i] * amplitudes[i];
            }
            else if (shares || amplitudes[i] != 1)
            {
                parts[count++] = new Part(pieces[i].Low, pieces[i].High, amplitudes[i]) { Piece = i, Shares = shares };
            }
        }

        if (everywhere <= least)
        {
            return 0;
        }

        int alone = 0;
        Span<bool> shared = pieces.Length <= MostOnStack ? stackalloc bool[pieces.Length] : new bool[pieces.Length];
        foreach (ref readonly Part part in parts[..count])
        {
            if (part.Shares)
            {
                shared[part.Piece] = true;
            }
            else
            {
                parts[alone++] = part with { Amplitude = Alone(pieces[part.Piece], part.Amplitude, reach) };
            }
        }

        count = alone;
        CutIntoStrips(pieces, amplitudes, shared, false, reach, parts, ref count);
        return everywhere * Sum(parts[..count], 1, reach);
    }

    /// <summary>Power that the panels of one mirror throw back, as a share of what a boundless one would.</summary>
    /// <param name="panels">The panels as the front meets them, all in one plane.</param>
    /// <param name="amplitudes">What each throws back.</param>
    /// <param name="reach">How far out the front reaches.</param>
    internal static double Reflected(ReadOnlySpan<Piece> panels, ReadOnlySpan<double> amplitudes, FrontReach reach)
    {
        int room = 2 * panels.Length;
        Span<Part> parts = room <= MostOnStack ? stackalloc Part[room] : new Part[room];
        Span<bool> shared = panels.Length <= MostOnStack ? stackalloc bool[panels.Length] : new bool[panels.Length];
        shared.Fill(true);
        int count = 0;
        CutIntoStrips(panels, amplitudes, shared, true, reach, parts, ref count);
        return Sum(parts[..count], 0, reach);
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
            if (pieces[j].Plane == piece.Plane && j != i
                && pieces[j].Low < piece.High - SameEdge && pieces[j].High > piece.Low + SameEdge)
            {
                return true;
            }
        }

        return false;
    }

    // The planes that pieces share: each cut into strips at its pieces' upright edges, with what stands over each other in each.
    private static void CutIntoStrips(
        ReadOnlySpan<Piece> pieces,
        ReadOnlySpan<double> amplitudes,
        Span<bool> shared,
        bool isMirror,
        FrontReach reach,
        Span<Part> parts,
        ref int count)
    {
        Span<double> edges = pieces.Length <= MostOnStack ? stackalloc double[2 * pieces.Length] : new double[2 * pieces.Length];
        Span<int> members = pieces.Length <= MostOnStack ? stackalloc int[pieces.Length] : new int[pieces.Length];
        for (int first = 0; first < pieces.Length; first++)
        {
            int ends = 0, many = 0;
            for (int i = first; i < pieces.Length && shared[first]; i++)
            {
                if (shared[i] && pieces[i].Plane == pieces[first].Plane)
                {
                    members[many++] = i;
                    edges[ends++] = Math.Max(pieces[i].Low, -reach.End);
                    edges[ends++] = Math.Min(pieces[i].High, reach.End);
                }
            }

            ends = Arrange(edges[..ends]);
            for (int s = 0; s + 1 < ends; s++)
            {
                double at = (edges[s] + edges[s + 1]) / 2;
                if (Stacked(pieces, amplitudes, members[..many], at, isMirror, reach) is double amplitude and >= 0)
                {
                    parts[count++] = new Part(edges[s], edges[s + 1], amplitude);
                }
            }

            foreach (int i in members[..many])
            {
                shared[i] = false;
            }
        }
    }

    // The strips between the parts' upright edges, each by all that stands in it.
    private static double Sum(ReadOnlySpan<Part> parts, double beside, FrontReach reach)
    {
        int room = 2 * parts.Length;
        Span<double> edges = room <= MostOnStack ? stackalloc double[room] : new double[room];
        int count = 0;
        foreach (ref readonly Part part in parts)
        {
            AddEdge(edges, ref count, part.Low, reach);
            AddEdge(edges, ref count, part.High, reach);
        }

        edges = edges[..Arrange(edges[..count])];
        Span<double> strips = room <= MostOnStack ? stackalloc double[edges.Length + 1] : new double[edges.Length + 1];
        for (int s = 0; s < strips.Length; s++)
        {
            double at = Middle(edges, s, reach), through = 1;
            bool passes = false;
            foreach (ref readonly Part part in parts)
            {
                if (part.Low < at && part.High > at)
                {
                    through *= part.Amplitude;
                    passes = true;
                }
            }

            strips[s] = passes ? through : beside;
        }

        return PlainStripSum.MeanPower(edges, strips, reach);
    }

    // Amplitude of a piece that nothing stands over or under: beside it is air.
    private static double Alone(in Piece piece, double amplitude, FrontReach reach)
    {
        bool isOpenBelow = piece.Bottom > -reach.End, isOpenAbove = piece.Top < reach.End;
        if (!isOpenBelow && !isOpenAbove)
        {
            return amplitude;
        }

        ReadOnlySpan<double> edges = [piece.Bottom, piece.Top], strips = [1, amplitude, 1];
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

    // A stretch of the front with one amplitude from bottom to top. Until that is worked out: which piece it is, and whether it
    // shares its plane with others that stand over or under it.
    private record struct Part(double Low, double High, double Amplitude)
    {
        internal int Piece { get; init; }

        internal bool Shares { get; init; }
    }
}
