using System.Numerics;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Paths.Reflected;

/// <summary>
/// The wave that a flat surface reflects beside the one that passes over it, as a local mean over places at both ends.
/// <para>
/// Image theory: the two waves travel d' and d, with d'² − d² = 4·h1·h2, h1 and h2 the heights of the ends above the surface. So the
/// reflected wave lags by φ = k·(d' − d), and their power is that of 1 + Γ·e^(−jφ). The mean is over a window normal to the surface, at
/// each end of Gaussian shape with a standard deviation of 3.5 cm, that of a uniform window of ±6 cm (the window of the mean in the
/// player's shadow), or of a third of the height where that is more; what lies behind the surface counts as its image. So the waves
/// interfere near the surface and at grazing angles. From the second Fresnel zone on, and in front of a wall struck head on, the mean
/// keeps no interference, and the powers of both add. From <see cref="FadesFrom"/> to <see cref="Farthest"/> what is left fades out.
/// </para>
/// </summary>
internal static class GrazingWindow
{
    /// <summary>Least standard deviation of the window at each end, metres.</summary>
    internal const double LeastMetres = 0.035;

    /// <summary>Standard deviation of the window, share of the height above the surface, where that is more.</summary>
    internal const double HeightShare = 1.0 / 3;

    /// <summary>The phase from which what is left fades out, radians.</summary>
    internal const double FadesFrom = 6;

    /// <summary>The phase from which nothing is left, radians: with a surface this far away the waves do not interfere.</summary>
    internal const double Farthest = 8;

    // A window over which the phase changes by less than this, radians per standard deviation, needs few points.
    private const double Slow = 1.2;

    // Gauss-Hermite rule of five points (Abramowitz and Stegun, table 25.10, scaled): exact up to the ninth power.
    private static readonly (double At, double Weight)[] Few =
        [(-2.8569700138728, 0.0112574113277), (-1.3556261799742, 0.2220759220056), (0, 0.5333333333333), (1.3556261799742, 0.2220759220056), (2.8569700138728, 0.0112574113277)];

    // Equal steps: for a phase that changes fast they converge at once where they are fine enough.
    private static readonly (double At, double Weight)[] Many = Even(0.8, 4);

    /// <summary>The greatest h1·h2 with a phase that is not above <see cref="Farthest"/>, square metres.</summary>
    /// <param name="straightMetres">d.</param>
    /// <param name="wavelengthMetres">λ.</param>
    internal static double MostSquareMetres(double straightMetres, double wavelengthMetres)
    {
        double part = Farthest * wavelengthMetres / (8 * Math.PI); // h1·h2 = part·(d + d') there
        return 2 * part * (straightMetres + (2 * part));
    }

    /// <summary>1 near the surface, 0 from <see cref="Farthest"/> on.</summary>
    /// <param name="first">h1, metres, above 0.</param>
    /// <param name="second">h2.</param>
    /// <param name="straightMetres">d.</param>
    /// <param name="wavelengthMetres">λ.</param>
    internal static double Near(double first, double second, double straightMetres, double wavelengthMetres)
    {
        double reflectedMetres = Math.Sqrt((straightMetres * straightMetres) + (4 * first * second));
        double phase = 2 * Math.PI / wavelengthMetres * (reflectedMetres - straightMetres);
        return Fade.In((Farthest - phase) / (Farthest - FadesFrom));
    }

    /// <summary>The mean over the window: of |Γ|², and of the real part of Γ·e^(−jφ).</summary>
    /// <param name="table">What the surface reflects.</param>
    /// <param name="first">h1, metres, above 0.</param>
    /// <param name="second">h2.</param>
    /// <param name="straightMetres">d.</param>
    /// <param name="wavelengthMetres">λ.</param>
    internal static (double Power, double InStep) Mean(
        AngleTable table, double first, double second, double straightMetres, double wavelengthMetres)
    {
        double k = 2 * Math.PI / wavelengthMetres, apart = first - second, along = Math.Max(0, (straightMetres * straightMetres) - (apart * apart));
        double sum = (first + second) / Math.Sqrt((straightMetres * straightMetres) + (4 * first * second)), difference = apart / straightMetres;
        double one = Deviation(first), other = Deviation(second);
        ReadOnlySpan<(double At, double Weight)> firsts = k * Math.Abs(sum - difference) * one < Slow ? Few : Many;
        ReadOnlySpan<(double At, double Weight)> seconds = k * Math.Abs(sum + difference) * other < Slow ? Few : Many;
        double power = 0, inStep = 0;
        foreach ((double x, double ofFirst) in firsts)
        {
            double a = Math.Abs(first + (x * one));
            foreach ((double y, double ofSecond) in seconds)
            {
                double b = Math.Abs(second + (y * other)), weight = ofFirst * ofSecond;
                double straight = Math.Sqrt(along + ((a - b) * (a - b))), reflected = Math.Sqrt(along + ((a + b) * (a + b)));
                if (reflected > 0)
                {
                    (double reflectance, Complex field) = table.Reflected(Math.Min(1, (a + b) / reflected));
                    (double sin, double cos) = Math.SinCos(k * (reflected - straight));
                    power += weight * reflectance;
                    inStep += weight * ((field.Real * cos) + (field.Imaginary * sin));
                }
            }
        }

        return (power, inStep);
    }

    private static double Deviation(double heightMetres) => Math.Max(LeastMetres, HeightShare * heightMetres);

    private static (double At, double Weight)[] Even(double step, int each)
    {
        (double At, double Weight)[] places = [.. Enumerable.Range(-each, (2 * each) + 1).Select(i => (i * step, Math.Exp(-i * step * i * step / 2)))];
        double all = places.Sum(place => place.Weight);
        return [.. places.Select(place => (place.At, place.Weight / all))];
    }
}
