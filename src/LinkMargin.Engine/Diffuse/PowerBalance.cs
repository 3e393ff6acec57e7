using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace LinkMargin.Engine.Diffuse;

/// <summary>
/// Power balance of coupled cells, each with an even diffuse field.
/// <para>
/// Derivation. Let S be a cell's scalar power density in W/m² (energy density times c). Rays pass a small flat surface from
/// one side, from all directions of a half space, at F = S/4 watts per square metre (the mean of cos θ over the half space
/// is 1/2, and half of all rays go its way). A surface of area A that throws back the share R, passes T and turns the rest
/// to heat takes F·A·(1 − R) out of the cell, of which F·A·T goes on into the cell behind it. In the steady state what goes
/// in goes out:
/// </para>
/// <para>
/// F_i · (absorbed_i + Σ_k exchange_ik + lost_i) = W_i + Σ_k F_k · exchange_ki
/// </para>
/// <para>
/// with W the power put into the diffuse field. Summed over all cells the exchange cancels: ΣW = ΣF·(absorbed + lost).
/// Nothing here asks for small losses. Energy is counted into the field after its last reflection of its own (a path's),
/// lives for one free flight and for each further one it survives, and Σ R^n = 1/(1 − R) is exact; Sabine's form differs in
/// counting the first flight, which belongs to the direct path, as diffuse, and that is what fails when walls absorb most
/// of what strikes them. What is left of the assumption is that the field is even within a cell.
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
    private LU<double>? solver;

    internal PowerBalance(int cells)
    {
        absorbing = new double[cells];
        losing = new double[cells];
        volumes = new double[cells];
        exchanging = new double[cells, cells];
    }

    /// <summary>How many cells there are.</summary>
    internal int Count => absorbing.Length;

    /// <summary>Area of a perfect absorber that takes as much as the cell's own surfaces and things, m².</summary>
    internal double AbsorbingArea(int cell) => absorbing[cell];

    /// <summary>Area of a hole to out of doors that takes as much as goes there, m².</summary>
    internal double LosingArea(int cell) => losing[cell];

    /// <summary>How far energy in a cell's field runs before it is gone from it, 4V/A, metres.</summary>
    internal double LifeMetres(int cell)
    {
        if (cell == Cells.Outdoors)
        {
            return 0;
        }

        double leaving = absorbing[cell] + losing[cell];
        for (int k = 0; k < Count; k++)
        {
            leaving += exchanging[cell, k];
        }

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

    /// <summary>Adds to what a cell turns to heat.</summary>
    internal void Absorb(int cell, double squareMetres)
    {
        if (cell != Cells.Outdoors)
        {
            absorbing[cell] += squareMetres;
            solver = null;
        }
    }

    /// <summary>Adds to what passes between two cells, or from one to out of doors.</summary>
    internal void Exchange(int cell, int other, double squareMetres)
    {
        if (cell == other)
        {
            return;
        }

        solver = null;
        if (cell == Cells.Outdoors || other == Cells.Outdoors)
        {
            losing[cell == Cells.Outdoors ? other : cell] += squareMetres;
            return;
        }

        exchanging[cell, other] += squareMetres;
        exchanging[other, cell] += squareMetres;
    }

    /// <summary>The scalar power density of each cell, per square metre, for the power put into each.</summary>
    internal double[] Densities(IReadOnlyList<double> powers)
    {
        if (Count == 0)
        {
            return [];
        }

        solver ??= Factorise();
        Vector<double> flux = solver.Solve(DenseVector.OfEnumerable(powers));
        return [.. flux.Select(f => 4 * Math.Max(0, f))];
    }

    private LU<double> Factorise()
    {
        // A cell that loses nothing at all (no walls) would have no steady state: it is given a hole of 1 mm².
        const double LeastAreaSquareMetres = 1e-6;
        var matrix = new DenseMatrix(Count);
        for (int i = 0; i < Count; i++)
        {
            double leaving = absorbing[i] + losing[i];
            for (int k = 0; k < Count; k++)
            {
                leaving += exchanging[i, k];
                matrix[i, k] = -exchanging[i, k];
            }

            matrix[i, i] = Math.Max(leaving, LeastAreaSquareMetres);
        }

        return matrix.LU();
    }
}
