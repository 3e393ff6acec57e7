using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using MathNet.Numerics.LinearAlgebra;

namespace LinkMargin.Engine.Readings;

/// <summary>What a fit has to say of a house, to be kept: shifts of its materials, how sure they are, and how they hang together.</summary>
public sealed class FittedLosses
{
    /// <summary>Correlations come from a file with so many digits; beyond this they cannot hold together.</summary>
    private const double LeastEigenvalue = -0.01;

    private readonly Dictionary<string, int> places;
    private readonly Matrix<double> correlations;

    /// <summary>Makes them.</summary>
    /// <param name="houseName">The house they were fitted in.</param>
    /// <param name="readingCount">How many readings they rest on.</param>
    /// <param name="materials">The materials, each name once.</param>
    /// <param name="devices">The pairs of devices.</param>
    /// <param name="correlationOf">Correlation of two materials by their numbers, of what is still out about them.</param>
    public FittedLosses(
        string houseName,
        int readingCount,
        IReadOnlyList<FittedMaterial> materials,
        IReadOnlyList<FittedDevice> devices,
        Func<int, int, double> correlationOf)
    {
        ArgumentNullException.ThrowIfNull(materials);
        ArgumentNullException.ThrowIfNull(correlationOf);
        (HouseName, ReadingCount, Materials, Devices) = (houseName, readingCount, materials, devices);
        places = materials.Select((material, i) => (material.Name, i)).ToDictionary(m => m.Name, m => m.i);
        correlations = Matrix<double>.Build.Dense(materials.Count, materials.Count, (i, j) => i == j ? 1 : correlationOf(i, j));
    }

    /// <summary>The house they were fitted in.</summary>
    public string HouseName { get; }

    /// <summary>How many readings they rest on.</summary>
    public int ReadingCount { get; }

    /// <summary>The materials.</summary>
    public IReadOnlyList<FittedMaterial> Materials { get; }

    /// <summary>The pairs of devices.</summary>
    public IReadOnlyList<FittedDevice> Devices { get; }

    /// <summary>The links that were read, and what that says of each alone.</summary>
    public IReadOnlyList<FittedLink> Links { get; init; } = [];

    /// <summary>Whether the correlations can all hold at once: whether there is a law of chance that has them.</summary>
    public bool AreCorrelationsPossible =>
        Materials.Count == 0 || IsAbove(LeastEigenvalue);

    // All eigenvalues lie above a value if the matrix less it has a Cholesky factor, which is far cheaper than they are.
    private bool IsAbove(double value)
    {
        int count = correlations.RowCount;
        double[][] factor = [.. Enumerable.Range(0, count).Select(i => new double[i + 1])];
        for (int i = 0; i < count; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = correlations[i, j] - (i == j ? value : 0);
                for (int k = 0; k < j; k++)
                {
                    sum -= factor[i][k] * factor[j][k];
                }

                if (i == j && !(sum > 0))
                {
                    return false;
                }

                factor[i][j] = i == j ? Math.Sqrt(sum) : sum / factor[j][j];
            }
        }

        return true;
    }

    /// <summary>What a fit in a house gave.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="house">The house.</param>
    /// <param name="links">What it says of single links; null for nothing.</param>
    public static FittedLosses Of(LossFit fit, House house, IReadOnlyList<FittedLink>? links = null)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(house);
        return new FittedLosses(house.Name, fit.Problem.Readings.Count, fit.Materials, fit.Devices, fit.Correlation) { Links = links ?? [] };
    }

    /// <summary>What was read on the link between two places; null where nothing was.</summary>
    public FittedLink? Find(Point3 one, Point3 other) =>
        Links.MinBy(link => link.MetresFrom(one, other)) is { } nearest && double.IsFinite(nearest.MetresFrom(one, other)) ? nearest : null;

    /// <summary>Correlation of two materials by their numbers, −1 to 1.</summary>
    public double Correlation(int first, int second) => correlations[first, second];

    /// <summary>The fitted material of a row; null where it was not fitted.</summary>
    public FittedMaterial? Find(string tableRow) => places.TryGetValue(tableRow, out int place) ? Materials[place] : null;

    /// <summary>
    /// The house with its materials as fitted: the losses shifted, never below 0, in every depth of a row by as many times
    /// the shift; and what is still out about them.
    /// </summary>
    public House ApplyTo(House house) => HouseFabric.Replace(house, material => Find(material.TableRow) is { } fitted
        ? material with
        {
            LossDb = Shifted(material.LossDb, material, fitted),
            ThroughDb = material.ThroughDb is { } through ? Shifted(through, material, fitted) : null,
            FittedSpreadDb = fitted.SpreadDb * material.Scale,
        }
        : material);

    private static double Shifted(double lossDb, Material material, FittedMaterial fitted) =>
        Math.Max(0, lossDb + (fitted.ShiftDb * material.Scale));
}
