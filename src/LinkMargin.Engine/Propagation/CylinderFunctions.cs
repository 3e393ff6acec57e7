using System.Numerics;

namespace LinkMargin.Engine.Propagation;

/// <summary>
/// Bessel functions of whole orders by recurrence, as the series of a cylinder needs them. Each runs in the direction in which its
/// rounding errors die out: J and J′/J downwards, Y upwards. Abramowitz and Stegun, Handbook of Mathematical Functions (1964), sections
/// 9.1 and 9.12 (numbers of the equations from memory).
/// </summary>
internal static class CylinderFunctions
{
    private const double EulerGamma = 0.57721566490153286;

    // Orders above those wanted, and above the argument, from which the downward recurrences start.
    private const int OrdersAbove = 24;

    /// <summary>J_n(x) and Y_n(x) for n = 0 to the length of the spans less 1.</summary>
    /// <param name="x">The argument, above 0.</param>
    /// <param name="j">Receives J.</param>
    /// <param name="y">Receives Y; as long as J, 2 or more.</param>
    internal static void BesselJy(double x, Span<double> j, Span<double> y)
    {
        // J_(n−1) = (2n/x)·J_n − J_(n+1) from any small value far above; 1 = J_0 + 2·ΣJ_2k fixes the scale (9.1.27, 9.1.46).
        // Y_0 = (2/π)·(ln(x/2) + γ)·J_0 − (4/π)·Σ (−1)^k·J_2k/k (9.1.89), and Y_1 = −Y_0′ of the same series with
        // J_2k′ = (J_(2k−1) − J_(2k+1))/2.
        int top = 2 * ((Math.Max(j.Length, (int)x) + OrdersAbove) / 2);
        double above = 0, here = 1e-280, scale = 0, sum0 = 0, sum1 = 0, first = 0;
        for (int n = top; n >= 0; n--)
        {
            // 'here' is J_n and 'above' is J_(n+1), apart from the scale.
            if (n < j.Length)
            {
                j[n] = here;
            }

            if (n == 0)
            {
                scale += here;
                break;
            }

            double below = (2 * n / x * here) - above;
            if ((n & 1) == 0)
            {
                int k = n / 2;
                double sign = (k & 1) == 0 ? 1 : -1;
                scale += 2 * here;
                sum0 += sign * here / k;
                sum1 += sign * (below - above) / (2 * k);
            }
            else if (n == 1)
            {
                first = here;
            }

            (above, here) = (here, below);
        }

        for (int n = 0; n < j.Length; n++)
        {
            j[n] /= scale;
        }

        double logarithm = Math.Log(x / 2) + EulerGamma, j0 = here / scale, j1 = first / scale;
        y[0] = 2 / Math.PI * ((logarithm * j0) - (2 * sum0 / scale));
        y[1] = 2 / Math.PI * ((logarithm * j1) - (j0 / x) + (2 * sum1 / scale));
        for (int n = 1; n + 1 < y.Length; n++)
        {
            y[n + 1] = (2 * n / x * y[n]) - y[n - 1]; // 9.1.27
        }
    }

    /// <summary>J_n′(z)/J_n(z) for n = 0 to the length of the span less 1.</summary>
    /// <param name="z">The argument, off the real axis where J has its zeros.</param>
    /// <param name="ratios">Receives them.</param>
    internal static void LogarithmicDerivatives(Complex z, Span<Complex> ratios)
    {
        // With r_n = J_n/J_(n−1): r_n = 1/(2n/z − r_(n+1)), and J_n′/J_n = n/z − r_(n+1).
        int top = Math.Max(ratios.Length, (int)Complex.Abs(z)) + OrdersAbove;
        Complex above = 0;
        for (int n = top; n >= 0; n--)
        {
            if (n < ratios.Length)
            {
                ratios[n] = (n / z) - above;
            }

            above = 1 / ((2 * n / z) - above);
        }
    }
}
