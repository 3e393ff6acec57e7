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
    // Several planes may share a chain of pieces; a power of two.
    private const int Chains = 64;

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
        using Scratch scratch = Scratch.Open();
        Span<bool> shared = scratch.Of<bool>(pieces.Length);
        FindShared(pieces, shared);
        double amplitude = 1;
        for (int i = 0; i < pieces.Length; i++)
        {
            amplitude *= !shared[i] && pieces[i].TakesUpAll(reach) ? losses.Amplitude(pieces[i]) : 1;
        }

        return amplitude * amplitude;
    }

    /// <summary>Power that passes, for given amplitudes.</summary>
    internal static double PowerRatio(ReadOnlySpan<Piece> pieces, ReadOnlySpan<double> amplitudes, in FrontReach reach, double least = 0)
    {
        // Pieces that cover the whole front multiply; only the others have edges to sum.
        using Scratch scratch = Scratch.Open();
        Span<bool> shared = scratch.Of<bool>(pieces.Length);
        int manyShared = FindShared(pieces, shared);
        double everywhere = 1;
        for (int i = 0; i < pieces.Length; i++)
        {
            if (!shared[i] && pieces[i].TakesUpAll(reach))
            {
                everywhere *= amplitudes[i] * amplitudes[i];
            }
        }

        if (everywhere <= least)
        {
            return 0;
        }

        var parts = new FrontParts(scratch, pieces.Length, manyShared, reach);
        for (int i = 0; i < pieces.Length; i++)
        {
            if (!shared[i] && amplitudes[i] != 1 && !pieces[i].TakesUpAll(reach))
            {
                AddAlone(ref parts, pieces[i], amplitudes[i], reach);
            }
        }

        if (manyShared > 0)
        {
            CutIntoStrips(pieces, amplitudes, shared, false, reach, ref parts);
        }

        return everywhere * parts.MeanPower(1, least / everywhere);
    }

    /// <summary>Power that the panels of one mirror reflect, as a share of what an infinite one would.</summary>
    /// <param name="panels">The panels in the front, all in one plane.</param>
    /// <param name="amplitudes">What each reflects.</param>
    /// <param name="reach">How far out the front reaches.</param>
    internal static double Reflected(ReadOnlySpan<Piece> panels, ReadOnlySpan<double> amplitudes, in FrontReach reach)
    {
        using Scratch scratch = Scratch.Open();
        var parts = new FrontParts(scratch, panels.Length, panels.Length, reach);
        Span<bool> shared = scratch.Of<bool>(panels.Length);
        shared.Fill(true);
        CutIntoStrips(panels, amplitudes, shared, true, reach, ref parts);
        return parts.MeanPower(0, 0);
    }

    // Finds the pieces that share their plane with others above or below them on the front; returns how many.
    private static int FindShared(ReadOnlySpan<Piece> pieces, Span<bool> shared)
    {
        shared.Clear();
        // Pieces so far in chains, each with those of some planes: the last of each chain, and the one before each piece.
        using Scratch scratch = Scratch.Open();
        Span<int> lasts = scratch.Of<int>(Chains), before = scratch.Of<int>(pieces.Length);
        lasts.Fill(-1);
        int many = 0;
        for (int i = 0; i < pieces.Length; i++)
        {
            ref readonly Piece piece = ref pieces[i];
            if (piece.Plane == Piece.NoPlane)
            {
                continue;
            }

            ref int last = ref lasts[piece.Plane & (Chains - 1)];
            for (int j = last; j >= 0; j = before[j])
            {
                if (pieces[j].Plane == piece.Plane && pieces[j].Low < piece.High - FrontEdges.SameEdge && pieces[j].High > piece.Low + FrontEdges.SameEdge)
                {
                    many += (shared[i] ? 0 : 1) + (shared[j] ? 0 : 1);
                    shared[i] = shared[j] = true;
                }
            }

            before[i] = last;
            last = i;
        }

        return many;
    }

    // Cuts each plane that pieces share into strips at their upright edges, and adds what is above each other in each strip.
    private static void CutIntoStrips(
        ReadOnlySpan<Piece> pieces,
        ReadOnlySpan<double> amplitudes,
        Span<bool> shared,
        bool isMirror,
        in FrontReach reach,
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
                    edges[ends++] = Math.Max(pieces[i].Low, -reach.End);
                    edges[ends++] = Math.Min(pieces[i].High, reach.End);
                }
            }

            ends = FrontEdges.Arrange(edges[..ends]);
            for (int s = 0; s + 1 < ends; s++)
            {
                double at = (edges[s] + edges[s + 1]) / 2;
                AddStacked(ref parts, edges[s], edges[s + 1], new Plane(pieces, amplitudes, members[..many], isMirror), at, reach);
            }

            foreach (int i in members[..many])
            {
                shared[i] = false;
            }
        }
    }

    // A piece with nothing of its plane above or below it: beside it is air.
    private static void AddAlone(ref FrontParts parts, in Piece piece, double amplitude, in FrontReach reach)
    {
        bool isOpenBelow = piece.Bottom > -reach.End, isOpenAbove = piece.Top < reach.End;
        int at = parts.Begin(piece.Low, piece.High);
        if (isOpenBelow)
        {
            parts.Over(at, 1, piece.Bottom);
        }

        if (isOpenAbove)
        {
            parts.Over(at, amplitude, piece.Top);
        }

        parts.End(at, isOpenAbove ? 1 : amplitude);
    }

    // Adds one plane's pieces in the strip at a place, by the level edges in it; nothing where there are none.
    private static void AddStacked(ref FrontParts parts, double low, double high, in Plane plane, double at, in FrontReach reach)
    {
        using Scratch scratch = Scratch.Open();
        Span<int> standing = FindStanding(plane.Pieces, plane.Members, at, scratch.Of<int>(plane.Members.Length));
        if (standing.IsEmpty)
        {
            return;
        }

        Span<double> edges = LevelEdges(plane.Pieces, standing, scratch.Of<double>(2 * standing.Length), reach);
        int part = parts.Begin(low, high);
        for (int s = 0; s < edges.Length; s++)
        {
            parts.Over(part, AmplitudeAt(plane, standing, FrontEdges.Middle(edges, s, reach)), edges[s]);
        }

        parts.End(part, AmplitudeAt(plane, standing, FrontEdges.Middle(edges, edges.Length, reach)));
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
    private static Span<double> LevelEdges(ReadOnlySpan<Piece> pieces, ReadOnlySpan<int> standing, Span<double> room, in FrontReach reach)
    {
        int count = 0;
        foreach (int i in standing)
        {
            FrontEdges.Add(room, ref count, pieces[i].Bottom, reach);
            FrontEdges.Add(room, ref count, pieces[i].Top, reach);
        }

        return room[..FrontEdges.Arrange(room[..count])];
    }

    // Amplitude of the piece at a height: of several the one that loses more, or for a mirror reflects more. Beside them is air,
    // or for a mirror nothing.
    private static double AmplitudeAt(in Plane plane, ReadOnlySpan<int> standing, double height)
    {
        double amplitude = plane.IsMirror ? 0 : 1;
        foreach (int i in standing)
        {
            if (plane.Pieces[i].Bottom < height && plane.Pieces[i].Top > height)
            {
                amplitude = plane.IsMirror ? Math.Max(amplitude, plane.Amplitudes[i]) : Math.Min(amplitude, plane.Amplitudes[i]);
            }
        }

        return amplitude;
    }

    // The pieces of one plane, by their numbers among those of the front.
    private readonly ref struct Plane(ReadOnlySpan<Piece> pieces, ReadOnlySpan<double> amplitudes, ReadOnlySpan<int> members, bool isMirror)
    {
        public ReadOnlySpan<Piece> Pieces { get; } = pieces;

        public ReadOnlySpan<double> Amplitudes { get; } = amplitudes;

        public ReadOnlySpan<int> Members { get; } = members;

        public bool IsMirror { get; } = isMirror;
    }
}
