
namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// Power balance of coupled cells, each with a uniform diffuse field: a first approximation to the exchange between their facets
/// (<see cref="SurfaceExchange"/>).
/// <para>
/// Derivation. Let S be a cell's scalar power density in W/m² (energy density times c). Rays pass a small flat surface from
/// one side, from all directions of a half space, at F = S/4 watts per square metre (the mean of cos θ over the half space
/// is 1/2, and half of all rays go its way). A surface of area A that reflects the share R, passes T and turns the rest
/// to heat takes F·A·(1 − R) out of the cell, of which F·A·T goes on into the cell behind it. In the steady state what goes
/// in goes out:
/// </para>
/// <para>
/// F_i · (absorbed_i + Σ_k exchange_ik + lost_i) = W_i + Σ_k F_k · exchange_ki
/// </para>
/// <para>
/// with W the power put into the cell. Summed over all cells the exchange cancels: ΣW = ΣF·(absorbed + lost).
/// Nothing here requires small losses: power put in makes one free flight and each further one that it survives, and
/// Σ Rⁿ = 1/(1 − R) is exact. Sabine's form counts the first flight, which belongs to the direct path, as diffuse, and so it
/// fails where walls absorb most of what strikes them. The remaining assumption is that a flight is equally likely to strike
/// any part of a cell's surface.
/// </para>
/// <para>
/// The flux that has not yet been reflected obeys the same balance with all that is reflected removed as well, area R·A.
/// </para>
/// <para>
/// Method from memory after D. A. Hill, Electromagnetic Fields in Cavities (2009), chapter 7, and J. B. Andersen et al.,
/// Room electromagnetics, IEEE Antennas and Propagation Magazine 49(2), 2007.
/// </para>
/// </summary>
internal sealed class PowerBalance
{
    private readonly double[] absorbing; // square metres, by cell
    private readonly double[] volumes; // cubic metres, by cell
    private readonly List<(int Column, double Value)>[] exchanging; // square metres, by cell: for each other cell, in order
    private readonly double[] losing; // square metres, by cell, to outdoors
    private readonly double[] mirrors; // square metres, by cell, times what they reflect
    private readonly double[] scatterers;
    private SparseCholesky? all;
    private SparseCholesky? unreflected;

    internal PowerBalance(int cells)
    {
        absorbing = new double[cells];
        losing = new double[cells];
        mirrors = new double[cells];
        scatterers = new double[cells];
        volumes = new double[cells];
        exchanging = [.. Enumerable.Range(0, cells).Select(_ => new List<(int Column, double Value)>())];
    }

    /// <summary>How many cells there are.</summary>
    internal int Count => absorbing.Length;

    /// <summary>Area of perfect mirrors that reflects as much as the cell's own, m².</summary>
    internal double MirrorArea(int cell) => mirrors[cell];

    /// <summary>The same for surfaces that scatter, m².</summary>
    internal double ScatteringArea(int cell) => scatterers[cell];

    /// <summary>Mean distance that energy in a cell's field travels before it is lost from the cell, 4V/A, metres.</summary>
    internal double LifeMetres(int cell)
    {
        if (cell == Cells.Outdoors)
        {
            return 0;
        }

        double leaving = Leaving(cell);
        return leaving > 0 ? 4 * volumes[cell] / leaving : 0;
    }

    /// <summary>Adds to a cell's volume.</summary>
    internal void Fill(int cell, double cubicMetres)
    {
        if (cell != Cells.Outdoors)
        {
            volumes[cell] += cubicMetres;
        }
    }

    /// <summary>Adds to what a cell's facets, and the things in it, absorb.</summary>
    internal void Absorb(int cell, double squareMetres)
    {
        if (cell != Cells.Outdoors)
        {
            absorbing[cell] += squareMetres;
            Forget();
        }
    }

    /// <summary>Adds to what a cell's surfaces reflect.</summary>
    internal void Reflect(int cell, double squareMetres, bool isMirror)
    {
        if (cell != Cells.Outdoors)
        {
            (isMirror ? mirrors : scatterers)[cell] += squareMetres;
            Forget();
        }
    }

    /// <summary>Adds to what passes between two cells, or from one to outdoors.</summary>
    internal void Exchange(int cell, int other, double squareMetres)
    {
        if (cell == other)
        {
            return;
        }

        Forget();
        if (cell == Cells.Outdoors || other == Cells.Outdoors)
        {
            losing[cell == Cells.Outdoors ? other : cell] += squareMetres;
            return;
        }

        AddTo(exchanging[cell], other, squareMetres);
        AddTo(exchanging[other], cell, squareMetres);
    }

    /// <summary>What strikes the surfaces of each cell, W/m², for the power put into each.</summary>
    internal double[] Flux(ReadOnlySpan<double> powers) => Solve(ref all, powers, false);

    /// <summary>The part of it that has not yet been reflected.</summary>
    internal double[] BeforeReflection(ReadOnlySpan<double> powers) => Solve(ref unreflected, powers, true);

    /// <summary>The same two for a correction, which may be negative: what is put in, and so what strikes.</summary>
    /// <param name="powers">What is put into each cell, W.</param>
    /// <param name="withReflection">Whether it is reflected.</param>
    /// <param name="flux">Receives what strikes, W/m².</param>
    internal void Correct(ReadOnlySpan<double> powers, bool withReflection, Span<double> flux) =>
        (withReflection ? Factor(ref all, false) : Factor(ref unreflected, true)).Solve(powers, flux);

    private static void AddTo(List<(int Column, double Value)> row, int other, double squareMetres)
    {
        int at = row.FindIndex(one => one.Column >= other);
        if (at >= 0 && row[at].Column == other)
        {
            row[at] = (other, row[at].Value + squareMetres);
        }
        else
        {
            row.Insert(at < 0 ? row.Count : at, (other, squareMetres));
        }
    }

    private double Leaving(int cell)
    {
        double leaving = absorbing[cell] + losing[cell];
        foreach ((_, double squareMetres) in exchanging[cell])
        {
            leaving += squareMetres;
        }

        return leaving;
    }

    private void Forget() => all = unreflected = null;

    private double[] Solve(ref SparseCholesky? solver, ReadOnlySpan<double> powers, bool reflectionEnds)
    {
        double[] flux = new double[Count];
        Factor(ref solver, reflectionEnds).Solve(powers, flux);
        foreach (ref double f in flux.AsSpan())
        {
            f = Math.Max(0, f);
        }

        return flux;
    }

    private SparseCholesky Factor(ref SparseCholesky? solver, bool reflectionEnds) =>
        LazyInitializer.EnsureInitialized(ref solver, () => Factorise(reflectionEnds));

    // A wall passes as much one way as the other, and no cell passes on more than leaves it: symmetric and positive definite.
    private SparseCholesky Factorise(bool reflectionEnds)
    {
        // A cell that loses nothing at all (no walls) would have no steady state: it is given a hole of 1 mm².
        const double LeastAreaSquareMetres = 1e-6;
        double[] diagonal = new double[Count];
        for (int i = 0; i < diagonal.Length; i++)
        {
            double leaving = Leaving(i) + (reflectionEnds ? mirrors[i] + scatterers[i] : 0), passing = 0;
            foreach ((_, double squareMetres) in exchanging[i])
            {
                passing += squareMetres;
            }

            diagonal[i] = Math.Max(leaving, passing + LeastAreaSquareMetres);
        }

        return new SparseCholesky(diagonal, [.. exchanging.Select(row => row.ConvertAll(one => (one.Column, -one.Value)))]);
    }
}
