using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// Power balance of coupled cells, each with an even diffuse field: a first answer to the exchange between their facets
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
/// with W the power that sets out into the cell. Summed over all cells the exchange cancels: ΣW = ΣF·(absorbed + lost).
/// Nothing here requires small losses: what is put in lives for one free flight and for each further one it survives, and
/// Σ Rⁿ = 1/(1 − R) is exact; Sabine's form differs in counting the first flight, which belongs to the direct path, as
/// diffuse, and that is what fails when walls absorb most of what strikes them. What is left of the assumption is that a
/// flight is as likely to strike any part of a cell's surface as any other.
/// </para>
/// <para>
/// Where a flight's reflections are counted, the flux of those not yet reflected obeys the same balance with all that is
/// reflected taken out as well, area R·A.
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
    private readonly double[,] exchanging; // square metres, between cells
    private readonly double[] losing; // square metres, by cell, to out of doors
    private readonly double[] mirrors; // square metres, by cell, times what they reflect
    private readonly double[] scatterers;
    private Cholesky<double>? all;
    private Cholesky<double>? unreflected;

    internal PowerBalance(int cells)
    {
        absorbing = new double[cells];
        losing = new double[cells];
        mirrors = new double[cells];
        scatterers = new double[cells];
        volumes = new double[cells];
        exchanging = new double[cells, cells];
    }

    /// <summary>How many cells there are.</summary>
    internal int Count => absorbing.Length;

    /// <summary>Area of a perfect absorber that takes as much as the cell's own surfaces and things, m².</summary>
    internal double AbsorbingArea(int cell) => absorbing[cell];

    /// <summary>Area of a hole to out of doors that takes as much as goes there, m².</summary>
    internal double LosingArea(int cell) => losing[cell];

    /// <summary>Area of perfect mirrors that reflects as much as the cell's own, m².</summary>
    internal double MirrorArea(int cell) => mirrors[cell];

    /// <summary>The same of what scatters what it reflects, m².</summary>
    internal double ScatteringArea(int cell) => scatterers[cell];

    /// <summary>How far energy in a cell's field runs before it is gone from it, 4V/A, metres.</summary>
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

    /// <summary>Adds to what a cell's facets, and what stands in it, turn to heat.</summary>
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

    /// <summary>Adds to what passes between two cells, or from one to out of doors.</summary>
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

        exchanging[cell, other] += squareMetres;
        exchanging[other, cell] += squareMetres;
    }

    /// <summary>What strikes the surfaces of each cell, W/m², for the power that sets out into each.</summary>
    internal double[] Flux(IReadOnlyList<double> powers) => Solve(ref all, powers, false);

    /// <summary>The part of it that has not yet been reflected since it set out.</summary>
    internal double[] BeforeReflection(IReadOnlyList<double> powers) => Solve(ref unreflected, powers, true);

    private double Leaving(int cell)
    {
        double leaving = absorbing[cell] + losing[cell];
        for (int k = 0; k < Count; k++)
        {
            leaving += exchanging[cell, k];
        }

        return leaving;
    }

    private void Forget() => all = unreflected = null;

    private double[] Solve(ref Cholesky<double>? solver, IReadOnlyList<double> powers, bool reflectionEnds)
    {
        if (Count == 0)
        {
            return [];
        }

        solver ??= Factorise(reflectionEnds);
        Vector<double> flux = solver.Solve(DenseVector.OfEnumerable(powers));
        return [.. flux.Select(f => Math.Max(0, f))];
    }

    // As much passes a wall one way as the other and no cell passes on more than leaves it: symmetrical and positive.
    private Cholesky<double> Factorise(bool reflectionEnds)
    {
        // A cell that loses nothing at all (no walls) would have no steady state: it is given a hole of 1 mm².
        const double LeastAreaSquareMetres = 1e-6;
        var matrix = new DenseMatrix(Count);
        for (int i = 0; i < Count; i++)
        {
            double leaving = Leaving(i) + (reflectionEnds ? mirrors[i] + scatterers[i] : 0), passing = 0;
            for (int k = 0; k < Count; k++)
            {
                matrix[i, k] = -exchanging[i, k];
                passing += exchanging[i, k];
            }

            matrix[i, i] = Math.Max(leaving, passing + LeastAreaSquareMetres);
        }

        return matrix.Cholesky();
    }
}
