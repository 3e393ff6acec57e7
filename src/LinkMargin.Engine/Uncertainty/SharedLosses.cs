using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;
using MathNet.Numerics.LinearAlgebra;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// What all of a material in one house has in common: one unknown shift for each row of the material table; every depth of the
/// row shifts by its scale times that.
/// </summary>
internal sealed class SharedLosses
{
    private readonly int[] rowOf; // by material

    internal SharedLosses(IReadOnlyList<Material> materials, UncertaintyBasis basis)
    {
        Materials = materials;
        string[] names = [.. materials.Select(m => m.TableRow).Distinct(StringComparer.Ordinal)];
        rowOf = [.. materials.Select(m => Array.IndexOf(names, m.TableRow))];
        Names = names;
        SpreadsDb = [.. names.Select(name => SpreadOf(materials.First(m => m.TableRow == name), basis.Spreads))];
        Together = TogetherOf(names, basis.Fitted);
    }

    /// <summary>The materials.</summary>
    internal IReadOnlyList<Material> Materials { get; }

    /// <summary>The rows.</summary>
    internal IReadOnlyList<string> Names { get; }

    /// <summary>Spread of each row's shift, dB.</summary>
    internal IReadOnlyList<double> SpreadsDb { get; }

    /// <summary>
    /// Each row's shift, in units of its spread, as a mixture of independent unknowns of unit spread; null where the rows are
    /// independent.
    /// </summary>
    internal Matrix<double>? Together { get; }

    /// <summary>The row of a material.</summary>
    internal int RowOf(int material) => rowOf[material];

    /// <summary>Derivatives by the rows from those by <see cref="Links.Stored.StoredPaths.Parameters"/>.</summary>
    internal double[] ByRow(ReadOnlySpan<double> gradient)
    {
        double[] byRow = new double[Names.Count];
        for (int m = 0; m < rowOf.Length; m++)
        {
            byRow[rowOf[m]] += gradient[m] * Materials[m].Scale;
        }

        return byRow;
    }

    /// <summary>One row's shift over its spread in every draw.</summary>
    internal double[] Drawn(LatinHypercubeSampler draws, int row)
    {
        if (Together is not { } together)
        {
            return draws.Of($"material {Names[row]}");
        }

        double[][] own = [.. Names.Select(name => draws.Of($"material {name}"))];
        return [.. Enumerable.Range(0, own[0].Length).Select(d => Enumerable.Range(0, own.Length).Sum(k => together[row, k] * own[k][d]))];
    }

    private static double SpreadOf(Material material, Spreads spreads) =>
        (material.FittedSpreadDb ?? spreads.InCommonDb(material.SpreadDb)) / material.Scale;

    // A square root of the correlations. Those from a file are rounded, so an eigenvalue may be slightly below 0.
    private static Matrix<double>? TogetherOf(string[] names, FittedLosses? fitted)
    {
        if (fitted is null)
        {
            return null;
        }

        int[] place = [.. names.Select(name => fitted.Materials.ToList().FindIndex(m => m.Name == name))];
        var correlations = Matrix<double>.Build.Dense(names.Length, names.Length, (i, j) =>
            i == j ? 1 : place[i] >= 0 && place[j] >= 0 ? fitted.Correlation(place[i], place[j]) : 0);
        var parts = correlations.Evd(Symmetricity.Symmetric);
        Vector<double> roots = parts.EigenValues.Map(value => Math.Sqrt(Math.Max(0, value.Real)));
        return (parts.EigenVectors * Matrix<double>.Build.DenseOfDiagonalVector(roots) * parts.EigenVectors.Transpose()).NormalizeRows(2);
    }
}
