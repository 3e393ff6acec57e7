using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// One link's margin in every drawn house. What the model leaves out is normal and independent for each link, so it is not
/// drawn: each draw is spread by its distribution, as infinitely many draws of it would do.
/// </summary>
public sealed class DrawnMargins
{
    private const double LeastResidualDb = 1e-6; // keeps the distribution smooth even where nothing is left out
    private const double NearEnoughDb = 1e-6;

    // Of the spread of what is left out: the cube is below any figure shown.
    private const double LastStep = 1e-3;

    private readonly double[] marginDb;
    private readonly double residualDb;
    private readonly Lazy<double> medianDb;

    /// <summary>Makes margins from draws.</summary>
    /// <param name="marginDb">The margin in each draw, dB.</param>
    /// <param name="residualDb">Spread of what the model leaves out, dB.</param>
    internal DrawnMargins(double[] marginDb, double residualDb)
    {
        this.marginDb = marginDb;
        this.residualDb = Math.Max(LeastResidualDb, residualDb);
        SpreadDb = Math.Sqrt((residualDb * residualDb) + ArrayStatistics.PopulationVariance(marginDb));
        medianDb = new(() => ExceededDb(0.5));
    }

    /// <summary>The median, dB: as likely too high as too low.</summary>
    public double MedianDb => medianDb.Value;

    /// <summary>One standard deviation, dB.</summary>
    public double SpreadDb { get; }

    /// <summary>Probability that the margin is at least this, 0 to 1.</summary>
    public double ProbabilityOf(double leastDb)
    {
        double sum = 0;
        foreach (double margin in marginDb)
        {
            sum += NormalTable.Below((margin - leastDb) / residualDb);
        }

        return sum / marginDb.Length;
    }

    /// <summary>Spread of what the model leaves out on this link, dB.</summary>
    internal double ResidualDb => residualDb;

    /// <summary>The margin in one drawn house, apart from what the model leaves out, dB.</summary>
    internal double InDrawDb(int draw) => marginDb[draw];

    /// <summary>The same probability in one drawn house.</summary>
    internal double ProbabilityOf(double leastDb, int draw) => NormalTable.Below((marginDb[draw] - leastDb) / residualDb);

    /// <summary>The margin that is exceeded with a probability, dB.</summary>
    /// <param name="confidence">The probability, above 0 and below 1.</param>
    public double ExceededDb(double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(confidence);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(confidence, 1);

        // Halley steps within two bounds that close in on the solution: the error after a step is of the order of its cube.
        double away = Normal.InvCDF(0, residualDb, 1 - confidence);
        double low = marginDb.Min() + away, high = marginDb.Max() + away;
        double at = Math.Clamp(ArrayStatistics.Mean(marginDb) + Normal.InvCDF(0, SpreadDb, 1 - confidence), low, high); // near, if all is normal
        while (high - low > NearEnoughDb)
        {
            (double above, double density, double slope) = LawAt(at);
            (low, high) = above > confidence ? (at, high) : (low, at);
            double newton = (above - confidence) / density, step = newton / (1 + (newton * slope / (2 * density)));
            bool isWithin = at + step > low && at + step < high;
            if (isWithin && Math.Abs(step) < LastStep * residualDb)
            {
                return at + step;
            }

            at = isWithin ? at + step : (low + high) / 2;
        }

        return (low + high) / 2;
    }

    // The probability to be above a margin, its density there, and how the density rises with the margin.
    private (double Above, double Density, double Slope) LawAt(double atDb)
    {
        double above = 0, density = 0, slope = 0;
        foreach (double margin in marginDb)
        {
            double z = (margin - atDb) / residualDb, each = Math.Exp(-z * z / 2);
            above += NormalTable.Below(z);
            density += each;
            slope += z * each;
        }

        double scale = 1 / (marginDb.Length * residualDb * Math.Sqrt(2 * Math.PI));
        return (above / marginDb.Length, density * scale, slope * scale / residualDb);
    }
}
