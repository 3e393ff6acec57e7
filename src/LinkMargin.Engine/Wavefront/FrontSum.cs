namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// Adds up what passes through the pieces in a ray's front, and beside them, to a local mean.
/// <para>
/// The ends of the pieces cut the front into upright strips. In each, the pieces of one plane are above each other: a sill, a
/// door and the wall above it, or a low wall and the air above. Their level edges are summed first (<see cref="StripSum"/>), to
/// an amplitude for the plane; where two pieces overlap, such as a wall drawn twice, the one with more loss counts, once.
/// The amplitudes of planes behind each other multiply. Then the strips are summed over their upright edges.
/// </para>
/// </summary>
internal static class FrontSum
{
    /// <summary>Power that passes a front of the usual reach, as a share of free space; 0 where that is no more than the least that counts.</summary>
    internal static double PowerRatio(ReadOnlySpan<Piece> pieces, LossTables losses, double least = 0) =>
        PowerRatio(pieces, losses, FrontReach.Usual, least);

    /// <summary>The same for any reach.</summary>
    internal static double PowerRatio(ReadOnlySpan<Piece> pieces, LossTables losses, in FrontReach reach, double least = 0)
    {
        using Scratch scratch = Scratch.Open();
        Span<double> amplitudes = scratch.Of<double>(pieces.Length);
        for (int i = 0; i < pieces.Length; i++)
        {
            amplitudes[i] = losses.Amplitude(pieces[i]);
        }

        return PowerRatio(pieces, amplitudes, reach, least);
    }

    /// <summary>
    /// The most that passes, whatever else stands in the front: what is left by the pieces that cover all of it. The sum itself is no such bound,
    /// since an obstacle may block a wave from an edge that cancels part of the others.
    /// </summary>
    internal static double MostPowerRatio(ReadOnlySpan<Piece> pieces, LossTables losses, in FrontReach reach)
    {
        if (pieces.IsEmpty)
        {
            return 1;
        }

        using Scratch scratch = Scratch.Open();
        var planes = new FrontPlanes(scratch, pieces);
        double amplitude = 1;
        for (int i = 0; i < pieces.Length; i++)
        {
            amplitude *= planes.IsAlone(i) && pieces[i].TakesUpAll(reach) ? losses.Amplitude(pieces[i]) : 1;
        }

        return amplitude * amplitude;
    }

    /// <summary>Power that passes, for given amplitudes.</summary>
    internal static double PowerRatio(ReadOnlySpan<Piece> pieces, ReadOnlySpan<double> amplitudes, in FrontReach reach, double least = 0)
    {
        // Pieces that cover the whole front multiply; only the others have edges to sum.
        using Scratch scratch = Scratch.Open();
        var planes = new FrontPlanes(scratch, pieces);
        Span<int> taken = scratch.Of<int>(pieces.Length);
        double everywhere = 1;
        int many = 0;
        for (int i = 0; i < pieces.Length; i++)
        {
            if (!planes.IsAlone(i))
            {
                taken[many++] = i;
            }
            else if (pieces[i].TakesUpAll(reach))
            {
                everywhere *= amplitudes[i] * amplitudes[i];
            }
            else if (amplitudes[i] != 1)
            {
                taken[many++] = i;
            }
        }

        return everywhere <= least ? 0 : everywhere * MeanPower(pieces, amplitudes, taken[..many], planes, reach, 1, least / everywhere);
    }

    /// <summary>Power that the panels of one mirror reflect, as a share of what an infinite one would.</summary>
    /// <param name="panels">The panels in the front, all in one plane.</param>
    /// <param name="amplitudes">What each reflects.</param>
    /// <param name="reach">How far out the front reaches.</param>
    internal static double Reflected(ReadOnlySpan<Piece> panels, ReadOnlySpan<double> amplitudes, in FrontReach reach)
    {
        using Scratch scratch = Scratch.Open();
        Span<int> all = scratch.Of<int>(panels.Length);
        for (int i = 0; i < all.Length; i++)
        {
            all[i] = i;
        }

        return MeanPower(panels, amplitudes, all, new FrontPlanes(scratch, panels), reach, 0, 0);
    }

    private static double MeanPower(
        ReadOnlySpan<Piece> pieces, ReadOnlySpan<double> amplitudes, Span<int> taken, in FrontPlanes planes, in FrontReach reach, double beside, double least)
    {
        using Scratch scratch = Scratch.Open();
        var strips = new FrontStrips(scratch, pieces, amplitudes, taken, reach, beside);
        Span<int> members = scratch.Of<int>(taken.Length);
        foreach (int i in taken)
        {
            if (planes.IsAlone(i))
            {
                strips.AddAlone(i);
            }
            else if (planes.IsLast(i))
            {
                strips.AddPlane(members[..planes.Members(i, pieces, members)]);
            }
        }

        return strips.MeanPower(least);
    }
}
