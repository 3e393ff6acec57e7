namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// Adds up what passes through the pieces that a ray's front meets, and beside them, to a local mean.
/// <para>
/// The ends of the pieces cut the front into upright strips. In each, the pieces of one plane stand over each other: a sill, a
/// door and the wall over it, or a low wall and the air above. Their edges are level ones, summed first (<see cref="StripSum"/>),
/// to an amplitude for the plane; where two claim one place, such as a wall drawn twice, the one that takes more counts, once.
/// The amplitudes of planes behind each other multiply. Then the strips are summed over their upright edges.
/// </para>
/// </summary>
internal static class FrontSum
{
    /// <summary>Power that passes, as a share of free space; 0 where that is no more than the least that counts.</summary>
    internal static double PowerRatio(ReadOnlySpan<Piece> pieces, LossTables losses, double least = 0)
    {
        Span<double> amplitudes = pieces.Length <= StripSum.MostOnStack ? stackalloc double[pieces.Length] : new double[pieces.Length];
        for (int i = 0; i < pieces.Length; i++)
        {
            amplitudes[i] = losses.Amplitude(pieces[i]);
        }

        return PowerRatio(pieces, amplitudes, least);
    }

    /// <summary>The same for amplitudes worked out before.</summary>
    internal static double PowerRatio(ReadOnlySpan<Piece> pieces, ReadOnlySpan<double> amplitudes, double least = 0)
    {
        // What takes up the whole front multiplies; only the rest has edges to sum over.
        Span<bool> shared = pieces.Length <= StripSum.MostOnStack ? stackalloc bool[pieces.Length] : new bool[pieces.Length];
        bool isAnyShared = FindShared(pieces, shared);
        double everywhere = 1;
        for (int i = 0; i < pieces.Length; i++)
        {
            if (!shared[i] && pieces[i].TakesUpAll)
            {
                everywhere *= amplitudes[i] * amplitudes[i];
            }
        }

        if (everywhere <= least)
        {
            return 0;
        }

        int room = FrontParts.Room(pieces.Length);
        var parts = new FrontParts(pieces.Length <= StripSum.MostOnStack ? stackalloc double[room] : new double[room]);
        for (int i = 0; i < pieces.Length; i++)
        {
            if (!shared[i] && amplitudes[i] != 1 && !pieces[i].TakesUpAll)
            {
                parts.Add(pieces[i].Low, pieces[i].High, Alone(pieces[i], amplitudes[i]));
            }
        }

        if (isAnyShared)
        {
            CutIntoStrips(pieces, amplitudes, shared, false, ref parts);
        }

        return everywhere * parts.MeanPower(1, least / everywhere);
    }

    /// <summary>Power that the panels of one mirror throw back, as a share of what a boundless one would.</summary>
    /// <param name="panels">The panels as the front meets them, all in one plane.</param>
    /// <param name="amplitudes">What each throws back.</param>
    internal static double Reflected(ReadOnlySpan<Piece> panels, ReadOnlySpan<double> amplitudes)
    {
        int room = FrontParts.Room(panels.Length);
        var parts = new FrontParts(panels.Length <= StripSum.MostOnStack ? stackalloc double[room] : new double[room]);
        Span<bool> shared = panels.Length <= StripSum.MostOnStack ? stackalloc bool[panels.Length] : new bool[panels.Length];
        shared.Fill(true);
        CutIntoStrips(panels, amplitudes, shared, true, ref parts);
        return parts.MeanPower(0, 0);
    }

    // Which pieces share their plane with others that stand over or under them on the front; whether any do.
    private static bool FindShared(ReadOnlySpan<Piece> pieces, Span<bool> shared)
    {
        Span<int> planes = pieces.Length <= StripSum.MostOnStack ? stackalloc int[pieces.Length] : new int[pieces.Length];
        bool isAny = false;
        ulong met = 0; // a bit for each plane so far, some of them the same for several
        for (int i = 0; i < pieces.Length; i++)
        {
            int plane = pieces[i].Plane;
            ulong bit = 1ul << (plane & 63);
            bool mayBeMet = (met & bit) != 0 && plane != Piece.NoPlane;
            met |= bit;
            for (int j = 0, step; mayBeMet && (step = planes[j..i].IndexOf(plane)) >= 0; j++)
            {
                j += step;
                if (pieces[j].Low < pieces[i].High - FrontEdges.SameEdge && pieces[j].High > pieces[i].Low + FrontEdges.SameEdge)
                {
                    shared[i] = shared[j] = isAny = true;
                }
            }

            planes[i] = plane;
        }

        return isAny;
    }

    // The planes that pieces share: each cut into strips at its pieces' upright edges, with what stands over each other in each.
    private static void CutIntoStrips(
        ReadOnlySpan<Piece> pieces,
        ReadOnlySpan<double> amplitudes,
        Span<bool> shared,
        bool isMirror,
        ref FrontParts parts)
    {
        Span<double> edges = pieces.Length <= StripSum.MostOnStack ? stackalloc double[2 * pieces.Length] : new double[2 * pieces.Length];
        Span<int> members = pieces.Length <= StripSum.MostOnStack ? stackalloc int[pieces.Length] : new int[pieces.Length];
        for (int first = 0; first < pieces.Length; first++)
        {
            int ends = 0, many = 0;
            for (int i = first; i < pieces.Length && shared[first]; i++)
            {
                if (shared[i] && pieces[i].Plane == pieces[first].Plane)
                {
                    members[many++] = i;
                    edges[ends++] = Math.Max(pieces[i].Low, -EdgeKernel.Reach);
                    edges[ends++] = Math.Min(pieces[i].High, EdgeKernel.Reach);
                }
            }

            ends = FrontEdges.Arrange(edges[..ends]);
            for (int s = 0; s + 1 < ends; s++)
            {
                double at = (edges[s] + edges[s + 1]) / 2;
                if (Stacked(pieces, amplitudes, members[..many], at, isMirror) is double amplitude and >= 0)
                {
                    parts.Add(edges[s], edges[s + 1], amplitude);
                }
            }

            foreach (int i in members[..many])
            {
                shared[i] = false;
            }
        }
    }

    // Amplitude of a piece that nothing stands over or under: beside it is air.
    private static double Alone(in Piece piece, double amplitude)
    {
        bool isOpenBelow = piece.Bottom > -EdgeKernel.Reach, isOpenAbove = piece.Top < EdgeKernel.Reach;
        if (!isOpenBelow && !isOpenAbove)
        {
            return amplitude;
        }

        ReadOnlySpan<double> edges = [piece.Bottom, piece.Top], strips = [1, amplitude, 1];
        int from = isOpenBelow ? 0 : 1, to = isOpenAbove ? 2 : 1;
        return Math.Sqrt(StripSum.MeanPower(edges[from..to], strips[from..(to + 1)]));
    }

    // Amplitude of one plane's pieces in the strip at a place, from the level edges in it; below 0 where none stands there.
    // Beside the pieces is air, or for a mirror nothing.
    private static double Stacked(
        ReadOnlySpan<Piece> pieces, ReadOnlySpan<double> amplitudes, ReadOnlySpan<int> members, double at, bool isMirror)
    {
        Span<int> standing = members.Length <= StripSum.MostOnStack ? stackalloc int[members.Length] : new int[members.Length];
        Span<double> edges = members.Length <= StripSum.MostOnStack ? stackalloc double[2 * members.Length] : new double[2 * members.Length];
        int there = 0, count = 0;
        foreach (int i in members)
        {
            if (pieces[i].Low < at && pieces[i].High > at)
            {
                standing[there++] = i;
                FrontEdges.Add(edges, ref count, pieces[i].Bottom);
                FrontEdges.Add(edges, ref count, pieces[i].Top);
            }
        }

        if (there == 0)
        {
            return -1;
        }

        edges = edges[..FrontEdges.Arrange(edges[..count])];
        Span<double> strips = members.Length <= StripSum.MostOnStack ? stackalloc double[edges.Length + 1] : new double[edges.Length + 1];
        for (int s = 0; s < strips.Length; s++)
        {
            double height = FrontEdges.Middle(edges, s), amplitude = isMirror ? 0 : 1;
            foreach (int i in standing[..there])
            {
                if (pieces[i].Bottom < height && pieces[i].Top > height)
                {
                    amplitude = isMirror ? Math.Max(amplitude, amplitudes[i]) : Math.Min(amplitude, amplitudes[i]);
                }
            }

            strips[s] = amplitude;
        }

        return edges.IsEmpty ? strips[0] : Math.Sqrt(StripSum.MeanPower(edges, strips));
    }
}
