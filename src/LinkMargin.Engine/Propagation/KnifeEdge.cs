using System.Numerics;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Propagation;

/// <summary>
/// Diffraction by a single knife edge. Recommendation ITU-R P.526-16 (11/2025), Annex 1, section 4.1, Single knife-edge
/// obstacle.
/// </summary>
public static class KnifeEdge
{
    /// <summary>
    /// Above this v equation (31) holds; at and below it the loss is 0, where without the limit it would be a gain.
    /// </summary>
    public const double LeastParameter = -0.78;

    /// <summary>
    /// Shortest distance to the edge, in wavelengths, at which the method is at ease; the text asks for distances large
    /// against the wavelength (how large is judgement).
    /// </summary>
    public const double LeastDistanceWavelengths = 1;

    private const string TooClose = "An edge is nearer than one wavelength to an end of the path: the loss is a rough figure.";
    private const string TooSteep = "A path bends by more than 45° at an edge: its loss by height is a rough figure.";

    /// <summary>v of an edge from heights and distances.</summary>
    /// <param name="heightMetres">
    /// h, height of the edge over the straight line, metres; below 0 where the line is clear.
    /// </param>
    /// <param name="firstMetres">d1, from one end to the edge along the line, metres, above 0.</param>
    /// <param name="secondMetres">d2, from the edge to the other end, metres, above 0.</param>
    /// <param name="wavelengthMetres">λ, metres, above 0.</param>
    /// <returns>v, no unit, with a caution for an edge closer than λ to an end, or higher than it is far.</returns>
    public static Estimate<double> Parameter(
        double heightMetres, double firstMetres, double secondMetres, double wavelengthMetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(firstMetres);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(secondMetres);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wavelengthMetres);
        double v = heightMetres * Math.Sqrt(2 / wavelengthMetres * ((1 / firstMetres) + (1 / secondMetres))); // (26)
        double nearer = Math.Min(firstMetres, secondMetres);
        string? caution = nearer < LeastDistanceWavelengths * wavelengthMetres ? TooClose
            : Math.Abs(heightMetres) > nearer ? TooSteep
            : null;
        return new(v, caution);
    }

    /// <summary>
    /// v of an edge from how much longer the way over it is than the straight line. The same as equation (26) where the
    /// height is small against the distances, since the detour is then h²/2·(1/d1 + 1/d2); better where it is not.
    /// </summary>
    /// <param name="detourMetres">
    /// Length over the edge less the straight length, metres; below 0, as rounding makes it, counts as 0.
    /// </param>
    /// <param name="isBlocked">Whether the straight line is blocked (v above 0) rather than clear.</param>
    /// <param name="wavelengthMetres">λ, metres, above 0.</param>
    public static double ParameterOfDetour(double detourMetres, bool isBlocked, double wavelengthMetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wavelengthMetres);
        double v = 2 * Math.Sqrt(Math.Max(0, detourMetres) / wavelengthMetres);
        return isBlocked ? v : -v;
    }

    /// <summary>
    /// How much longer the way from one point to another over a third is than the straight line, metres, 0 or more. With u
    /// and w the two legs it is 2·|u × w|²/((|u|·|w| + u·w)·(|u| + |w| + |u + w|)), which keeps its digits where the way hardly
    /// bends and the difference of lengths would not.
    /// </summary>
    /// <param name="from">One end.</param>
    /// <param name="over">The point on the edge.</param>
    /// <param name="to">The other end.</param>
    public static double DetourMetres(Point3 from, Point3 over, Point3 to)
    {
        double first = from.DistanceTo(over), second = over.DistanceTo(to), straight = from.DistanceTo(to);
        double ux = over.X - from.X, uy = over.Y - from.Y, uz = over.Z - from.Z;
        double wx = to.X - over.X, wy = to.Y - over.Y, wz = to.Z - over.Z;
        double onwards = (ux * wx) + (uy * wy) + (uz * wz);
        if (onwards <= 0)
        {
            return first + second - straight;
        }

        double cx = (uy * wz) - (uz * wy), cy = (uz * wx) - (ux * wz), cz = (ux * wy) - (uy * wx);
        double cross = (cx * cx) + (cy * cy) + (cz * cz);
        return 2 * cross / (((first * second) + onwards) * (first + second + straight));
    }

    /// <summary>J(v), loss of the edge by the approximation of equation (31).</summary>
    /// <param name="v">Parameter of the edge, no unit.</param>
    /// <returns>
    /// dB over free space, 0 or more, never falling with v; within 0.15 dB of <see cref="ExactLossDb"/> above v = −0.5.
    /// </returns>
    public static double LossDb(double v) => v > LeastParameter ? Approximation(v) : 0;

    /// <summary>Loss of the edge from the Fresnel integrals, equation (30) (number from memory), ripples and all.</summary>
    /// <param name="v">Parameter of the edge, no unit.</param>
    /// <returns>dB over free space; down to −1.4 where the edge's wave adds to a clear line.</returns>
    public static double ExactLossDb(double v) => -20 * Math.Log10(Complex.Abs(Coefficient(v)));

    /// <summary>
    /// F(v), complex field behind the edge over that without it, referred to the straight line's phase, so that the fields
    /// past several edges can be summed as they are or in power.
    /// </summary>
    /// <param name="v">Parameter of the edge, no unit.</param>
    public static Complex Coefficient(double v) => FresnelIntegral.ShareBeyond(v);

    /// <summary>
    /// The field's magnitude by equation (31), 10^(−J/20), without ripple: 1 where equation (31) itself comes to 0, at
    /// v = −0.7806, so that no step is left at the limit; 0 at +∞.
    /// </summary>
    /// <param name="v">Parameter of the edge, no unit.</param>
    internal static double SmoothAmplitude(double v) => v > -1 ? Math.Min(1, Math.Pow(10, -Approximation(v) / 20)) : 1;

    private static double Approximation(double v) =>
        6.9 + (20 * Math.Log10(Math.Sqrt(((v - 0.1) * (v - 0.1)) + 1) + v - 0.1)); // (31)
}
