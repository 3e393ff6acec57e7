using LinkMargin.Engine.Materials;

namespace LinkMargin.Engine.Wavefront;

/// <summary>Room for what one line crosses, used again for the next; one for each thread.</summary>
internal sealed class TraceBuffer
{
    /// <summary>Room for the numbers a tree query writes.</summary>
    internal int[] Candidates = new int[64];

    private Hit[] hits = new Hit[32];
    private Piece[] pieces = new Piece[32];
    private SurfaceAlong[] surfaces = new SurfaceAlong[8];

    /// <summary>How many hits there are.</summary>
    internal int Count { get; private set; }

    /// <summary>The hits, in the order they stand in.</summary>
    internal Span<Hit> Hits => hits.AsSpan(0, Count);

    /// <summary>How many pieces there are.</summary>
    internal int PieceCount { get; set; }

    /// <summary>The pieces in a ray's front.</summary>
    internal Span<Piece> Pieces => pieces.AsSpan(0, PieceCount);

    /// <summary>How many surfaces there are along the link's straight line.</summary>
    internal int SurfaceCount { get; set; }

    /// <summary>The surfaces along the link's straight line.</summary>
    internal Span<SurfaceAlong> Surfaces => surfaces.AsSpan(0, SurfaceCount);

    /// <summary>
    /// What the link's direct path and diffuse field bring without the player's own body, share of the transmitted power: both are found before
    /// any other path.
    /// </summary>
    internal double AlwaysPower { get; set; }

    /// <summary>Adds a surface.</summary>
    internal void Add(in SurfaceAlong surface)
    {
        if (SurfaceCount == surfaces.Length)
        {
            Array.Resize(ref surfaces, 2 * surfaces.Length);
        }

        surfaces[SurfaceCount++] = surface;
    }

    /// <summary>Sets the surfaces of a link that was computed before.</summary>
    internal void SetSurfaces(ReadOnlySpan<SurfaceAlong> known)
    {
        SurfaceCount = 0;
        foreach (ref readonly SurfaceAlong surface in known)
        {
            Add(surface);
        }
    }

    /// <summary>Whether a mirror is one of the surfaces along the line.</summary>
    internal bool IsAlong(int mirror, out SurfaceAlong surface)
    {
        foreach (ref readonly SurfaceAlong one in Surfaces)
        {
            if (one.Mirror == mirror)
            {
                surface = one;
                return true;
            }
        }

        surface = default;
        return false;
    }

    /// <summary>What the power of a reflection is multiplied by: along a surface it interferes with the straight line.</summary>
    internal double FactorOf(int mirror) => IsAlong(mirror, out SurfaceAlong surface) ? surface.Factor : 1;

    /// <summary>Forgets all hits.</summary>
    internal void Clear() => Count = 0;

    /// <summary>Keeps only the first hits.</summary>
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

/// <summary>A surface that a link's straight line runs along, close enough for its reflection to interfere.</summary>
/// <param name="Mirror">The upright mirror's number, or that of a plate (<see cref="OfPlate"/>).</param>
/// <param name="Power">Power of its reflection, share of the transmitted power, without interference.</param>
/// <param name="BarePower">The same without the player's own body.</param>
/// <param name="Fill">How far its panels are taken out of the line's front: the share that they fill where it reflects, 0 to 1.</param>
/// <param name="More">How much more its reflection brings as a mean over the window of places, share of its power.</param>
/// <param name="InStep">How far its wave is in phase with that on the line, −1 (opposite) to 1.</param>
internal readonly record struct SurfaceAlong(int Mirror, double Power, double BarePower, double Fill, double More, double InStep)
{
    // Keeps the power of both above 0.
    private const double LeastFactor = 1e-6;

    /// <summary>Power of the line and the reflection with interference, share of the sum of both; each is multiplied by it.</summary>
    internal double Factor { get; init; } = 1;

    /// <summary>The number that stands for a floor or ceiling.</summary>
    internal static int OfPlate(int plate) => -2 - plate;

    /// <summary>The same with the factor for a wave on the line, given that wave's power without the player's own body.</summary>
    internal SurfaceAlong Beside(double barePower)
    {
        double sum = barePower + BarePower;
        return this with
        {
            Factor = sum > 0 ? Math.Max(LeastFactor, 1 + (((BarePower * More) + (2 * Math.Sqrt(barePower * BarePower) * InStep)) / sum)) : 1,
        };
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
    /// Whether it is a solid thing. Its loss is taken at normal incidence, as in the wave front: a line that enters by one side and
    /// leaves by another loses the same both ways.
    /// </summary>
    public bool IsSolid;

    /// <summary>How much of it counts: see the share of a crossing.</summary>
    public double Share;

    /// <summary>The mirror that the surface is part of, by number; −1 where it is none.</summary>
    public int Mirror;
}
