namespace LinkMargin.Engine.Wavefront;

/// <summary>The planes that the pieces of a front stand in: of each piece, the one before it in its plane.</summary>
internal readonly ref struct FrontPlanes
{
    // Several planes may share a chain of pieces; a power of two.
    private const int Chains = 64;

    private readonly Span<int> before;
    private readonly Span<bool> isLast;

    /// <summary>Finds them.</summary>
    internal FrontPlanes(in Scratch scratch, ReadOnlySpan<Piece> pieces)
    {
        before = scratch.Of<int>(pieces.Length);
        isLast = scratch.Of<bool>(pieces.Length);
        isLast.Fill(true);
        Span<int> chain = scratch.Of<int>(pieces.Length), ends = scratch.Of<int>(Chains);
        ends.Fill(-1);
        for (int i = 0; i < pieces.Length; i++)
        {
            int plane = pieces[i].Plane, last = -1;
            if (plane != Piece.NoPlane)
            {
                ref int end = ref ends[plane & (Chains - 1)];
                for (last = end; last >= 0 && pieces[last].Plane != plane;)
                {
                    last = chain[last];
                }

                chain[i] = end;
                end = i;
                if (last >= 0)
                {
                    isLast[last] = false;
                }
            }

            before[i] = last;
        }
    }

    /// <summary>Whether a piece has its plane for itself.</summary>
    internal bool IsAlone(int piece) => isLast[piece] && before[piece] < 0;

    /// <summary>Whether a piece is the last of its plane.</summary>
    internal bool IsLast(int piece) => isLast[piece];

    /// <summary>Writes the pieces of a plane, by number, in order of their bottoms; returns how many there are.</summary>
    internal int Members(int last, ReadOnlySpan<Piece> pieces, Span<int> members)
    {
        int many = 0;
        for (int i = last; i >= 0; i = before[i])
        {
            double bottom = pieces[i].Bottom;
            int at = many++;
            for (; at > 0 && pieces[members[at - 1]].Bottom > bottom; at--)
            {
                members[at] = members[at - 1];
            }

            members[at] = i;
        }

        return many;
    }
}
