using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace LinkMargin.Engine.Fitting;

/// <summary>
/// Whether the measurements scatter as they should. The squares of the residuals over their noise, plus those of the unknowns
/// over their prior spreads, sum to chi-square with as many degrees of freedom as there are measurements: in the linear case
/// exactly, since as many unknowns are found as priors are added.
/// </summary>
/// <param name="MeasurementCount">Measurements that were heard and do not look bad.</param>
/// <param name="BadCount">Measurements that look bad.</param>
/// <param name="ChiSquare">The sum over the measurements that do not look bad.</param>
/// <param name="UpperTail">Probability of a sum this large or larger; near 0 they scatter too much.</param>
/// <param name="LowerTail">Probability of a sum this small or smaller; near 0 they scatter too little.</param>
public sealed record FitGoodness(int MeasurementCount, int BadCount, double ChiSquare, double UpperTail, double LowerTail)
{
    /// <summary>A probability below this is taken to be no coincidence.</summary>
    public const double Unlikely = 0.01;

    /// <summary>If more than this share of measurements look bad, the model is at fault, not the measurements.</summary>
    public const double MostBad = 0.25;

    /// <summary>The verdict.</summary>
    public FitVerdict Verdict =>
        UpperTail < Unlikely || BadCount > MostBad * (MeasurementCount + BadCount) ? FitVerdict.ModelLooksWrong
        : BadCount > 0 ? FitVerdict.SomeMeasurementsLookWrong
        : LowerTail < Unlikely ? FitVerdict.TooGoodToBeTrue
        : FitVerdict.Consistent;

    /// <summary>Judges a fit.</summary>
    public static FitGoodness Of(LossFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        FitResidual[] good = [.. fit.Residuals.Where(r => r.Measurement.IsHeard && !r.LooksBad)];
        double sum = good.Sum(r => Math.Pow(r.ResidualDb / r.Measurement.NoiseDb, 2)) + fit.State.Unknowns.Sum(u => u * u);
        int bad = fit.Residuals.Count(r => r.LooksBad);
        if (good.Length == 0)
        {
            return new FitGoodness(0, bad, sum, 1, 1);
        }

        // The upper tail loses digits as a complement, but it is only compared with 1 %.
        double below = ChiSquared.CDF(good.Length, sum);
        return new FitGoodness(good.Length, bad, sum, 1 - below, below);
    }
}

/// <summary>What the scatter of the measurements means.</summary>
public enum FitVerdict
{
    /// <summary>The measurements scatter about the fit as far as they should.</summary>
    Consistent,

    /// <summary>They do, apart from a few that look bad.</summary>
    SomeMeasurementsLookWrong,

    /// <summary>They scatter more than the stated noise and the tables allow: the model, or the house as written, looks wrong.</summary>
    ModelLooksWrong,

    /// <summary>They scatter less than measurements can: rows copied, or made up, or the noise stated too large.</summary>
    TooGoodToBeTrue,
}

/// <summary>Logarithms of the standard normal density and of its lower tail, without underflow however far out.</summary>
internal static class NormalTail
{
    private const double HalfLogTwoPi = 0.918938533204672741780;

    /// <summary>Below this the asymptotic series is accurate to the last bits of a double.</summary>
    private const double FarOut = -20;

    /// <summary>ln φ(x).</summary>
    internal static double LogDensity(double x) => (-x * x / 2) - HalfLogTwoPi;

    /// <summary>ln Φ(x).</summary>
    internal static double LogTail(double x)
    {
        if (x > FarOut)
        {
            return x < 0
                ? Math.Log(SpecialFunctions.Erfc(-x / Constants.Sqrt2) / 2)
                : double.LogP1(-SpecialFunctions.Erfc(x / Constants.Sqrt2) / 2);
        }

        // Φ(x) = φ(x)/|x| · (1 − 1/x² + 3/x⁴ − 15/x⁶ + …), Abramowitz and Stegun 26.2.12.
        double s = 1 / (x * x);
        return LogDensity(x) - Math.Log(-x) + double.LogP1(-s * (1 - (3 * s * (1 - (5 * s * (1 - (7 * s)))))));
    }
}
