using System.Runtime.Intrinsics;

namespace LinkMargin.Engine.Geometry;

/// <summary>
/// Eight arc tangents at once, accurate to 1e-15. Symmetry brings each argument to within ±tan(π/8), where a quotient of polynomials
/// gives the angle (coefficients from memory after S. L. Moshier, Methods and Programs for Mathematical Functions, 1989).
/// </summary>
internal static class ArcTangent
{
    private const double TanOfEighth = 0.41421356237309503; // tan(π/8)

    /// <summary>The angle of the direction (x, y), y ≥ 0, from 0 to π; 0 if both are 0.</summary>
    internal static Vector512<double> Of(Vector512<double> y, Vector512<double> x)
    {
        Vector512<double> zero = Vector512<double>.Zero, one = Vector512<double>.One, across = Vector512.Abs(x);
        Vector512<double> most = Vector512.Max(across, y), ratio = Vector512.Min(across, y) / most;
        ratio = Vector512.ConditionalSelect(Vector512.GreaterThan(most, zero), ratio, zero);
        Vector512<double> isSteep = Vector512.GreaterThan(ratio, Vector512.Create(TanOfEighth));
        Vector512<double> z = Vector512.ConditionalSelect(isSteep, (ratio - one) / (ratio + one), ratio);
        Vector512<double> angle = Small(z) + (isSteep & Vector512.Create(Math.PI / 4));
        angle = Vector512.ConditionalSelect(Vector512.GreaterThan(y, across), Vector512.Create(Math.PI / 2) - angle, angle);
        return Vector512.ConditionalSelect(Vector512.LessThan(x, zero), Vector512.Create(Math.PI) - angle, angle);
    }

    private static Vector512<double> Small(Vector512<double> x)
    {
        Vector512<double> z = x * x;
        Vector512<double> above = Vector512.Create(-8.750608600031904122785e-1);
        above = (above * z) + Vector512.Create(-1.615753718733365076637e1);
        above = (above * z) + Vector512.Create(-7.500855792314704667340e1);
        above = (above * z) + Vector512.Create(-1.228866684490136173410e2);
        above = (above * z) + Vector512.Create(-6.485021904942025371773e1);
        Vector512<double> below = z + Vector512.Create(2.485846490142306297962e1);
        below = (below * z) + Vector512.Create(1.650270098316988542046e2);
        below = (below * z) + Vector512.Create(4.328810604912902668951e2);
        below = (below * z) + Vector512.Create(4.853903996359136964868e2);
        below = (below * z) + Vector512.Create(1.945506571482613964425e2);
        return x + (x * z * above / below);
    }
}
