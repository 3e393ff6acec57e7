namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// Adds up what passes through the pieces in a ray's front, and beside them, to a local mean.
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
        using Scratch scratch = Scratch.Open();
        Span<double> amplitudes = scratch.Of<double>(pieces.Length);
        for (int i = 0; i < pieces.Length; i++)
        {
            amplitudes[i] = losses.Amplitude(pieces[i]);
        }

        return PowerRatio(pieces, amplitudes, least);
    }

    /// <summary>The same for given amplitudes.</summary>
    internal static double PowerRatio(ReadOnlySpan<Piece> pieces, ReadOnlySpan<double> amplitudes, double least = 0)
    {
        // What takes up the whole front multiplies; only the rest has edges to sum over.
        using Scratch scratch = Scratch.Open();
        Span<bool> shared = scratch.Of<bool>(pieces.Length);
        shared.Clear();
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

        var parts = new FrontParts(scratch.Of<double>(FrontParts.Room(pieces.Length)));
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

    /// <summary>Power that the panels of one mirror reflect, as a share of what a boundless one would.</summary>
    /// <param name="panels">The panels in the front, all in one plane.</param>
    /// <param name="amplitudes">What each reflects.</param>
    internal static double Reflected(ReadOnlySpan<Piece> panels, ReadOnlySpan<double> amplitudes)
    {
        using Scratch scratch = Scratch.Open();
        var parts = new FrontParts(scratch.Of<double>(FrontParts.Room(panels.Length)));
        Span<bool> shared = scratch.Of<bool>(panels.Length);
        shared.Fill(true);
        CutIntoStrips(panels, amplitudes, shared, true, ref parts);
        return parts.MeanPower(0, 0);
    }

    // Which pieces share their plane with others that stand over or under them on the front; whether any do.
    private static bool FindShared(ReadOnlySpan<Piece> pieces, Span<bool> shared)
    {
        using Scratch scratch = Scratch.Open();
        Span<int> planes = scratch.Of<int>(pieces.Length);
        bool isAny = false;
        ulong seen = 0; // a bit for each plane so far, some of them the same for several
        for (int i = 0; i < pieces.Length; i++)
        {
            int plane = pieces[i].Plane;
            ulong bit = 1ul << (plane & 63);
            bool mayBeSeen = (seen & bit) != 0 && plane != Piece.NoPlane;
            seen |= bit;
            for (int j = 0, step; mayBeSeen && (step = planes[j..i].IndexOf(plane)) >= 0; j++)
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
        using Scratch scratch = Scratch.Open();
        Span<double> edges = scratch.Of<double>(2 * pieces.Length);
        Span<int> members = scratch.Of<int>(pieces.Length);
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
    private static double Stacked(
        ReadOnlySpan<Piece> pieces, ReadOnlySpan<double> amplitudes, ReadOnlySpan<int> members, double at, bool isMirror)
    {
        using Scratch scratch = Scratch.Open();
        Span<int> standing = FindStanding(pieces, members, at, scratch.Of<int>(members.Length));
        if (standing.IsEmpty)
        {
            return -1;
        }

        Span<double> edges = LevelEdges(pieces, standing, scratch.Of<double>(2 * standing.Length));
        Span<double> strips = scratch.Of<double>(edges.Length + 1);
        for (int s = 0; s < strips.Length; s++)
        {
            strips[s] = AmplitudeAt(pieces, amplitudes, standing, FrontEdges.Middle(edges, s), isMirror);
        }

        return edges.IsEmpty ? strips[0] : Math.Sqrt(StripSum.MeanPower(edges, strips));
    }

    // The members that stand at a place across the front.
    private static Span<int> FindStanding(ReadOnlySpan<Piece> pieces, ReadOnlySpan<int> members, double at, Span<int> room)
    {
        int count = 0;
        foreach (int i in members)
        {
            if (pieces[i].Low < at && pieces[i].High > at)
            {
                room[count++] = i;
            }
        }

        return room[..count];
    }

    // Their tops and bottoms within reach, in order.
    private static Span<double> LevelEdges(ReadOnlySpan<Piece> pieces, ReadOnlySpan<int> standing, Span<double> room)
    {
        int count = 0;
        foreach (int i in standing)
        {
            FrontEdges.Add(room, ref count, pieces[i].Bottom);
            FrontEdges.Add(room, ref count, pieces[i].Top);
        }

        return room[..FrontEdges.Arrange(room[..count])];
    }

    // Amplitude of what stands at a height: of several the one that takes more, or reflects more. Beside them is air, or for a
    // mirror nothing.
    private static double AmplitudeAt(
        ReadOnlySpan<Piece> pieces, ReadOnlySpan<double> amplitudes, ReadOnlySpan<int> standing, double height, bool isMirror)
    {
        double amplitude = isMirror ? 0 : 1;
        foreach (int i in standing)
        {
            if (pieces[i].Bottom < height && pieces[i].Top > height)
            {
                amplitude = isMirror ? Math.Max(amplitude, amplitudes[i]) : Math.Min(amplitude, amplitudes[i]);
            }
        }

        return amplitude;
    }
}
