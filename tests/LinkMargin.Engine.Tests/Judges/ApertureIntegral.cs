using System.Numerics;
using System.Runtime.Intrinsics;
using MathNet.Numerics.Integration;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>
/// The field behind thin screens by Kirchhoff's integral over their planes in Fresnel's approximation, as a share of the field
/// with nothing in the way. Worked by quadrature; it uses nothing of the engine.
/// <para>
/// With u and w the distances from the line in a plane in units where the first Fresnel radius is √2 (the v of Recommendation
/// ITU-R P.526-16, equation (26)), a plane of transmission T(u, w) gives
/// F = j/2·∬ T·e^(−jπ(u² + w²)/2) du dw. T has few values, each over rectangles, so the double integral is a sum of products of
/// single ones.
/// </para>
/// </summary>
internal static class ApertureIntegral
{
    // Nodes of one stretch of the path of integration. Stretches are so long that the phase turns by two turns at most in each
    // (half a unit where |t| ≤ 12), which 16 nodes integrate to 1e-12.
    private static readonly GaussLegendreRule Stretch = new(0, 1, 16);

    private const double StretchLength = 0.5;

    // How many stretches the integral out to infinity is taken over, and the nodes of each, eight at a time.
    private const int Turned = 3;
    private static readonly Vector512<double>[] Abscissas = InEights(Stretch.Abscissas);
    private static readonly Vector512<double>[] Weights = InEights(Stretch.Weights);

    // −ln of what is left of an integrand where a path of integration may end.
    private const double Negligible = 39;

    // From here on nothing of a plane counts, v. See FadedFarOut.
    private const double Far = 10;

    // Places in each direction that a mean is taken over.
    private const int PlacesEachWay = 11;

    /// <summary>One rectangle of a plane, v, with the amplitude that passes it; ends may be infinite.</summary>
    internal readonly record struct Rectangle(double Left, double Right, double Bottom, double Top, double Amplitude);

    /// <summary>(1 + j)/2·∫ e^(−jπt²/2) dt between two places; 1 for the whole line.</summary>
    internal static Complex Between(double from, double to) => Beyond(from) - Beyond(to);

    /// <summary>
    /// Mean power behind one plane as the line is moved about by up to a reach each way, evenly over that stretch or square:
    /// what is received at places that far apart. Where rectangles overlap, the one that passes least counts; beside them all
    /// passes.
    /// </summary>
    /// <param name="screens">What stands in the plane.</param>
    /// <param name="across">How far the line is moved to the left and right, v; 0 for not at all.</param>
    /// <param name="up">How far it is moved up and down, v.</param>
    internal static double MeanPower(IReadOnlyList<Rectangle> screens, double across = 0, double up = 0)
    {
        double[] columns = Edges(screens.SelectMany(s => new[] { s.Left, s.Right }));
        double[] rows = Edges(screens.SelectMany(s => new[] { s.Bottom, s.Top }));
        double[,] passes = new double[columns.Length - 1, rows.Length - 1];
        for (int c = 0; c < columns.Length - 1; c++)
        {
            for (int r = 0; r < rows.Length - 1; r++)
            {
                passes[c, r] = screens.Where(s => s.Left <= columns[c] && s.Right >= columns[c + 1] && s.Bottom <= rows[r] && s.Top >= rows[r + 1])
                    .Select(s => s.Amplitude).DefaultIfEmpty(1).Min();
            }
        }

        Complex[][] wide = Stretches(columns, across), high = Stretches(rows, up);
        return wide.Average(w => high.Average(h =>
        {
            Complex field = 0;
            for (int c = 0; c < w.Length; c++)
            {
                for (int r = 0; r < h.Length; r++)
                {
                    field += passes[c, r] * w[c] * h[r];
                }
            }

            return field.Magnitude * field.Magnitude;
        }));
    }

    /// <summary>
    /// Mean power behind two planes of upright strips, one behind the other, by the integral over both. With v in each plane by
    /// its own distances and ρ² = d1·d3/((d1 + d2)(d2 + d3)), d2 the distance between them, the phase over free space is
    /// −π/2·(v1² − 2ρ·v1·v2 + v2²)/(1 − ρ²): for each v2 the first plane is met about ρ·v2, in units shorter by √(1 − ρ²).
    /// </summary>
    /// <param name="first">Strips in the plane nearer to the console.</param>
    /// <param name="second">Strips in the other, none over another.</param>
    /// <param name="rho">ρ, 0 to below 1; 1 would be one plane.</param>
    /// <param name="across">How far the line is moved in the second plane, v; in the first it moves by ρ of that.</param>
    internal static double MeanPowerOfTwo(
        IReadOnlyList<Rectangle> first, IReadOnlyList<Rectangle> second, double rho, double across = 0)
    {
        double unit = Math.Sqrt(1 - (rho * rho));
        double[] edges = Edges(first.SelectMany(s => new[] { s.Left, s.Right }));
        double[] passes =
        [
            .. edges.Zip(edges.Skip(1), (a, b) => first.Where(s => s.Left <= a && s.Right >= b).Select(s => s.Amplitude).DefaultIfEmpty(1).Min()),
        ];
        return Places(across).Average(moved =>
        {
            // By Babinet's principle: what comes past the first plane alone, less what the second one takes of it.
            Complex field = Behind(edges, passes, rho * moved, 1);
            foreach (Rectangle strip in second)
            {
                double from = Math.Max(strip.Left - moved, -Far), to = Math.Min(strip.Right - moved, Far);
                field -= (1 - strip.Amplitude) * new Complex(0.5, 0.5) * Integrate(from, to, Stretches(from, to), v =>
                    Complex.FromPolarCoordinates(FadedFarOut(v), -Math.PI / 2 * v * v) * Behind(edges, passes, (rho * moved) + (rho * v), unit));
            }

            return field.Magnitude * field.Magnitude;
        });
    }

    private static Complex Behind(double[] edges, double[] passes, double at, double unit)
    {
        Complex field = 0, beyond = 1;
        for (int i = 0; i < passes.Length; i++)
        {
            Complex next = Beyond((edges[i + 1] - at) / unit);
            field += passes[i] * (beyond - next);
            beyond = next;
        }

        return field;
    }

    // Faded out gently over some units far out, where the phase turns by 20 a unit: what is cut off there would cancel anyway.
    private static double FadedFarOut(double v) => MathNet.Numerics.SpecialFunctions.Erfc(Math.Abs(v) - 7) / 2;

    private static Complex[][] Stretches(double[] edges, double reach) =>
        [.. Places(reach).Select(at => edges.Zip(edges.Skip(1), (a, b) => Between(a - at, b - at)).ToArray())];

    /// <summary>Places spread evenly over a stretch to both sides of 0; 0 alone where it has no length.</summary>
    internal static double[] Places(double reach) =>
        reach == 0 ? [0] : [.. Enumerable.Range(0, PlacesEachWay).Select(i => reach * ((2 * (i + 0.5) / PlacesEachWay) - 1))];

    /// <summary>(1 + j)/2·∫ e^(−jπt²/2) dt from a place to ∞.</summary>
    internal static Complex Beyond(double from)
    {
        if (from < 0)
        {
            return Complex.One - Beyond(-from);
        }

        if (double.IsPositiveInfinity(from))
        {
            return 0;
        }

        // Along t = from + s·e^(−jπ/4) the integrand does not turn for ever but falls: it is e^(−jπ·from²/2)·e^(−(1 + j)·π·from·s/√2 − πs²/2).
        double slope = from / Math.Sqrt(2), end = Math.Sqrt((slope * slope) + (2 * Negligible / Math.PI)) - slope, length = end / Turned;
        Complex sum = 0;
        for (int stretch = 0; stretch < Turned; stretch++)
        {
            for (int k = 0; k < Abscissas.Length; k++)
            {
                Vector512<double> s = (Abscissas[k] + Vector512.Create((double)stretch)) * length, turn = Math.PI * slope * s;
                Vector512<double> left = Weights[k] * Vector512.Exp(-turn - (Math.PI / 2 * s * s));
                (Vector512<double> sin, Vector512<double> cos) = Vector512.SinCos(turn);
                sum += new Complex(Vector512.Dot(left, cos), -Vector512.Dot(left, sin));
            }
        }

        return new Complex(0.5, 0.5) * Complex.FromPolarCoordinates(length, -Math.PI / 4 * (1 + (2 * from * from))) * sum;
    }

    /// <summary>(1 + j)/2·∫ e^(−jπt²/2) dt between two finite places, on the straight path.</summary>
    internal static Complex StraightBetween(double from, double to) =>
        new Complex(0.5, 0.5) * Integrate(from, to, Stretches(from, to), t => Complex.FromPolarCoordinates(1, -Math.PI / 2 * t * t));

    private static Vector512<double>[] InEights(double[] nodes) => [.. nodes.Chunk(Vector512<double>.Count).Select(eight => Vector512.Create(eight))];

    private static int Stretches(double from, double to) => Math.Max(1, (int)Math.Ceiling((to - from) / StretchLength));

    /// <summary>Composite Gauss–Legendre quadrature.</summary>
    private static Complex Integrate(double from, double to, int stretches, Func<double, Complex> integrand)
    {
        double length = (to - from) / stretches;
        Complex sum = 0;
        for (int i = 0; i < stretches; i++)
        {
            for (int k = 0; k < Stretch.Order; k++)
            {
                sum += Stretch.Weights[k] * integrand(from + ((i + Stretch.Abscissas[k]) * length));
            }
        }

        return sum * length;
    }

    private static double[] Edges(IEnumerable<double> ends) =>
        [.. ends.Append(double.NegativeInfinity).Append(double.PositiveInfinity).Distinct().Order()];
}
