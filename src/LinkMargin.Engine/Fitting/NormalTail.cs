using MathNet.Numerics;

namespace LinkMargin.Engine.Fitting;

/// <summary>Logarithms of the standard normal density and of its lower tail, without underflow however far out.</summary>
internal static class NormalTail
{
    private const double HalfLogTwoPi = 0.918938533204672741780;

    /// <summary>Below this the asymptotic series is good to the last bits of a double.</summary>
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
