using LinkMargin.Engine.Materials;

namespace LinkMargin.Engine.Wavefront;

/// <summary>Room for what one line crosses, used again for the next; one for each thread.</summary>
internal sealed class TraceBuffer
{
    /// <summary>Room for the numbers a tree query writes.</summary>
    internal int[] Candidates = new int[64];

    private Hit[] hits = new Hit[32];
    private Piece[] pieces = new Piece[32];

    /// <summary>How many hits there are.</summary>
    internal int Count { get; private set; }

    /// <summary>The hits, in the order they stand in.</summary>
    internal Span<Hit> Hits => hits.AsSpan(0, Count);

    /// <summary>How many pieces there are.</summary>
    internal int PieceCount { get; set; }

    /// <summary>The pieces in a ray's front.</summary>
    internal Span<Piece> Pieces => pieces.AsSpan(0, PieceCount);

    /// <summary>Forgets all hits.</summary>
    internal void Clear() => Count = 0;

    /// <summary>Keeps the first so many.</summary>
    internal void KeepFirst(int count) => Count = count;

    /// <summary>Makes room for one more and hands it out; the caller sets every member.</summary>
    internal ref Hit Next()
    {
        if (Count == hits.Length)
        {
            Array.Resize(ref hits, 2 * hits.Length);
        }

        return ref hits[Count++];
    }

    /// <summary>Makes room for one more piece and hands it out; the caller sets every member.</summary>
    internal ref Piece NextPiece()
    {
        if (PieceCount == pieces.Length)
        {
            Array.Resize(ref pieces, 2 * pieces.Length);
        }

        return ref pieces[PieceCount++];
    }
}

/// <summary>One obstacle on a straight line, in numbers only: what the tracer writes and the evaluator reads.</summary>
internal struct Hit
{
    /// <summary>Place along the line, 0 at its start, 1 at its end.</summary>
    public double Along;

    /// <summary>Index into the scene's names.</summary>
    public int Name;

    /// <summary>Index into the scene's materials.</summary>
    public int Material;

    /// <summary>The level it belongs to.</summary>
    public int Level;

    /// <summary>What kind of thing it is.</summary>
    public ObstacleKind Kind;

    /// <summary>Cosine of the angle to the surface's normal, 0 to 1.</summary>
    public double CosIncidence;

    /// <summary>
    /// Whether it is a solid thing. Its loss is taken head on, as its front takes it: a line that goes in by one side and out by
    /// another loses the same both ways.
    /// </summary>
    public bool IsSolid;

    /// <summary>How much of it counts: see the share of a crossing.</summary>
    public double Share;

    /// <summary>The mirror that the surface is part of, by number; −1 where it is none.</summary>
    public int Mirror;
}
