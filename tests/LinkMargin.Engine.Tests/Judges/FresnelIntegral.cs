using System.Numerics;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>
/// Fresnel integrals C(v) = ∫ cos(πt²/2) dt and S(v) = ∫ sin(πt²/2) dt from 0 to v. Recommendation ITU-R P.526-16
/// (11/2025), section 2.7. Near 0 by the power series (Abramowitz and Stegun, Handbook of Mathematical Functions, 1964,
/// 7.3.11 and 7.3.13), beyond by the continued fraction of the complementary error function (7.1.14 there; numbers from
/// memory), to better than 1e-12.
/// </summary>
internal static class FresnelIntegral
{
    private const double SeriesUpTo = 1.8;
    private const int MostTerms = 200;

    private static readonly Complex HalfOneAndJ = new(0.5, 0.5);

    /// <summary>C(v) and S(v).</summary>
    /// <param name="v">Upper limit, no unit; any number, infinite ones too.</param>
    public static (double C, double S) At(double v)
    {
        if (Math.Abs(v) <= SeriesUpTo)
        {
            Complex near = Series(v);
            return (near.Real, near.Imaginary);
        }

        // C − jS = (1 − j)/2 − ∫ from v, and both integrals are odd.
        Complex beyond = Beyond(Math.Abs(v));
        double sign = Math.Sign(v);
        return (sign * (0.5 - beyond.Real), sign * (0.5 + beyond.Imaginary));
    }

    /// <summary>
    /// F(v) = (1 + j)/2·∫ e^{−jπt²/2} dt from v to ∞ = (1 + j)/2·[(1/2 − C) − j(1/2 − S)]: the share of a wave's field that
    /// passes a straight edge at v. 1 far below the edge, 1/2 on it, and falling as 1/(√2·π·v) in the shadow, to full
    /// relative accuracy there.
    /// </summary>
    /// <param name="v">Where the edge is, no unit; any number, infinite ones too.</param>
    public static Complex ShareBeyond(double v)
    {
        if (v < 0)
        {
            return Complex.One - ShareBeyond(-v);
        }

        if (v > SeriesUpTo)
        {
            return HalfOneAndJ * Beyond(v);
        }

        Complex near = Series(v);
        return HalfOneAndJ * new Complex(0.5 - near.Real, near.Imaginary - 0.5);
    }

    /// <summary>C + jS = Σ (jπ/2)^k·v^(2k+1)/(k!·(2k + 1)).</summary>
    private static Complex Series(double v)
    {
        Complex factor = new(0, Math.PI / 2 * v * v), power = v, sum = v;
        for (int k = 1; k < MostTerms; k++)
        {
            power *= factor / k;
            Complex term = power / ((2 * k) + 1);
            sum += term;
            if (Complex.Abs(term) < 1e-17)
            {
                break;
            }
        }

        return sum;
    }

    /// <summary>
    /// ∫ e^{−jπt²/2} dt from v to ∞ = (1 − j)/2·erfc(z), z = (√π/2)(1 + j)v, with erfc(z) = e^{−z²}/√π·1/(z + ½/(z + 1/(z + …)))
    /// worked by Lentz's method.
    /// </summary>
    private static Complex Beyond(double v)
    {
        if (double.IsPositiveInfinity(v))
        {
            return Complex.Zero;
        }

        Complex z = Math.Sqrt(Math.PI) / 2 * v * new Complex(1, 1);
        Complex fraction = z, c = z, d = Complex.Zero;
        for (int k = 1; k < MostTerms; k++)
        {
            double a = k / 2.0;
            d = Complex.One / (z + (a * d));
            c = z + (a / c);
            Complex step = c * d;
            fraction *= step;
            if (Complex.Abs(step - 1) < 1e-16)
            {
                break;
            }
        }

        // z² = jπv²/2; the angle is taken modulo a turn first, so that a far v keeps its phase.
        (double sin, double cos) = Math.SinCos(Math.PI / 2 * Math.IEEERemainder(v * v, 4));
        Complex turn = new(cos, -sin);
        return new Complex(0.5, -0.5) * turn / (Math.Sqrt(Math.PI) * fraction);
    }
}
