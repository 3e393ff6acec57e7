using System.Runtime.Intrinsics;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Propagation;

/// <summary>
/// Diffraction by a single knife edge. Recommendation ITU-R P.526-16 (11/2025), Annex 1, section 4.1, Single knife-edge
/// obstacle.
/// </summary>
public static class KnifeEdge
{
    /// <summary>
    /// Above this v equation (31) holds. At and below it the loss is 0, since the equation would give a gain.
    /// </summary>
    public const double LeastParameter = -0.78;

    /// <summary>
    /// Shortest distance from an end of a path to an edge, in wavelengths, at which the method holds; the text requires
    /// distances large against the wavelength (how large is judgement). Diffracted paths have no nearer edge: it would be part
    /// of the straight line's own wave front.
    /// </summary>
    public const double LeastDistanceWavelengths = 1;

    // Of equation (31).
    private const double BaseDb = 6.9;
    private const double Shift = 0.1;

    /// <summary>
    /// v of an edge from how much longer the path over it is than the straight line. The same as equation (26) where the
    /// height is small against the distances, since the detour is then h²/2·(1/d1 + 1/d2); more accurate where it is not.
    /// </summary>
    /// <param name="detourMetres">
    /// Length over the edge minus the straight length, metres; below 0, from rounding, counts as 0.
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
    /// How much longer the path from one point to another over a third is than the straight line, metres, 0 or more. With legs
    /// u and w it is 2·|u × w|²/((|u|·|w| + u·w)·(|u| + |w| + |u + w|)), which stays accurate where the path is almost straight
    /// and the difference of lengths would cancel.
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
    /// dB over free space, 0 or more, never decreasing with v; within 0.15 dB of the exact equation (30) above v = −0.5.
    /// </returns>
    public static double LossDb(double v) => v > LeastParameter ? BaseDb + (20 * Math.Log10(InLogarithm(v))) : 0; // (31)

    /// <summary>√((v − 0.1)² + 1) + v − 0.1, the argument of equation (31)'s logarithm; ∞ at v = ∞.</summary>
    /// <param name="v">Parameter of the edge, no unit.</param>
    internal static double InLogarithm(double v)
    {
        double w = v - Shift;
        return Math.Sqrt((w * w) + 1) + w;
    }

    /// <summary>The same for four edges at once, bit for bit.</summary>
    internal static Vector256<double> InLogarithm(Vector256<double> v)
    {
        Vector256<double> w = v - Vector256.Create(Shift);
        return Vector256.Sqrt((w * w) + Vector256<double>.One) + w;
    }
}
