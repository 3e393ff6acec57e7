using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using MathNet.Numerics.LinearAlgebra;

namespace LinkMargin.Engine.Fitting;

/// <summary>The result of a fit in a house, to be stored: shifts of its materials, their spreads and their correlations.</summary>
public sealed class FittedLosses
{
    /// <summary>Correlations from a file are rounded; with an eigenvalue below this they cannot be consistent.</summary>
    private const double LeastEigenvalue = -0.01;

    private readonly Dictionary<string, int> places;
    private readonly Matrix<double> correlations;

    /// <summary>Makes them.</summary>
    /// <param name="houseName">The house they were fitted in.</param>
    /// <param name="measurementCount">How many measurements they are based on.</param>
    /// <param name="materials">The materials, each name once.</param>
    /// <param name="devices">The pairs of devices.</param>
    /// <param name="correlationOf">Correlation of the remaining errors of two materials, by their numbers.</param>
    public FittedLosses(
        string houseName,
        int measurementCount,
        IReadOnlyList<FittedMaterial> materials,
        IReadOnlyList<FittedDevice> devices,
        Func<int, int, double> correlationOf)
    {
        ArgumentNullException.ThrowIfNull(materials);
        ArgumentNullException.ThrowIfNull(correlationOf);
        (HouseName, MeasurementCount, Materials, Devices) = (houseName, measurementCount, materials, devices);
        places = materials.Select((material, i) => (material.Name, i)).ToDictionary(m => m.Name, m => m.i);
        correlations = Matrix<double>.Build.Dense(materials.Count, materials.Count, (i, j) => i == j ? 1 : correlationOf(i, j));
    }

    /// <summary>The house they were fitted in.</summary>
    public string HouseName { get; }

    /// <summary>How many measurements they are based on.</summary>
    public int MeasurementCount { get; }

    /// <summary>The materials.</summary>
    public IReadOnlyList<FittedMaterial> Materials { get; }

    /// <summary>The pairs of devices.</summary>
    public IReadOnlyList<FittedDevice> Devices { get; }

    /// <summary>The links that were measured, and what that says about each alone.</summary>
    public IReadOnlyList<FittedLink> Links { get; init; } = [];

    /// <summary>Whether the correlations can all hold at once: whether any distribution has them.</summary>
    public bool AreCorrelationsPossible =>
        Materials.Count == 0 || IsAbove(LeastEigenvalue);

    // All eigenvalues are above a value if the matrix minus that value has a Cholesky factor, which is far cheaper to find.
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

    /// <summary>The result of a fit in a house.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="house">The house.</param>
    /// <param name="links">What it says about single links; null for nothing.</param>
    public static FittedLosses Of(LossFit fit, House house, IReadOnlyList<FittedLink>? links = null)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(house);
        return new FittedLosses(house.Name, fit.Problem.Measurements.Count, fit.Materials, fit.Devices, fit.Correlation) { Links = links ?? [] };
    }

    /// <summary>What was measured on the link between two places; null where nothing was.</summary>
    public FittedLink? Find(Point3 one, Point3 other) =>
        Links.MinBy(link => link.MetresFrom(one, other)) is { } nearest && double.IsFinite(nearest.MetresFrom(one, other)) ? nearest : null;

    /// <summary>Correlation of two materials by their numbers, −1 to 1.</summary>
    public double Correlation(int first, int second) => correlations[first, second];

    /// <summary>The fitted material of a row; null where it was not fitted.</summary>
    public FittedMaterial? Find(string tableRow) => places.TryGetValue(tableRow, out int place) ? Materials[place] : null;

    /// <summary>
    /// The house with its materials as fitted: their losses shifted, never below 0, and their remaining spreads. A depth of a row
    /// shifts by its scale times the row's shift.
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

/// <summary>A pair of devices after the fit.</summary>
/// <param name="Name">What the pair is called.</param>
/// <param name="OffsetDbm">The level it would show with no loss between them, dBm.</param>
/// <param name="SpreadDb">Spread of that level, dB.</param>
/// <param name="MeasurementCount">How many measurements it was taken in.</param>
public sealed record FittedDevice(string Name, double OffsetDbm, double SpreadDb, int MeasurementCount);

/// <summary>
/// What measurements on one link say about that link alone, beyond what they say about materials: how much more it loses than
/// the model says. The model leaves out furniture and pipes that stay where they are, so a measured link is known better than
/// one that was not measured.
/// </summary>
/// <param name="From">One end.</param>
/// <param name="To">The other; the loss is the same both ways.</param>
/// <param name="ShiftDb">How much more it loses than the fitted model says, dB.</param>
/// <param name="SpreadDb">Spread of that shift, in place of the spread of what the model leaves out, dB.</param>
public sealed record FittedLink(Point3 From, Point3 To, double ShiftDb, double SpreadDb)
{
    /// <summary>What the model leaves out is taken as the same within about two wavelengths: nobody measures or sits more exactly.</summary>
    private const double SamePlaceMetres = 0.3;

    /// <summary>Distance of its ends from two places, the larger of the two, metres; infinity where it is another link.</summary>
    public double MetresFrom(Point3 one, Point3 other)
    {
        double away = Math.Min(
            Math.Max(From.DistanceTo(one), To.DistanceTo(other)), Math.Max(From.DistanceTo(other), To.DistanceTo(one)));
        return away <= SamePlaceMetres ? away : double.PositiveInfinity;
    }
}

/// <summary>A material before and after the fit.</summary>
/// <param name="Name">Its row in the material table.</param>
/// <param name="TableLossDb">What the table says, dB.</param>
/// <param name="TableSpreadDb">Spread of that from house to house, dB.</param>
/// <param name="ShiftDb">How much more it loses in this house, dB; below 0 for less.</param>
/// <param name="SpreadDb">Remaining spread of the shift, dB.</param>
public sealed record FittedMaterial(string Name, double TableLossDb, double TableSpreadDb, double ShiftDb, double SpreadDb)
{
    /// <summary>The loss in this house, dB.</summary>
    public double LossDb => TableLossDb + ShiftDb;

    /// <summary>Remaining share of the table's spread: 1 where the measurements say nothing, 0 where they leave no uncertainty.</summary>
    public double SpreadLeft => TableSpreadDb > 0 ? SpreadDb / TableSpreadDb : 1;

    /// <summary>The shift in units of the table's spread: beyond about 2 it is more than the table allows for.</summary>
    public double ShiftInSpreads => TableSpreadDb > 0 ? ShiftDb / TableSpreadDb : 0;
}
