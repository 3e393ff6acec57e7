using System.Numerics;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>A knife edge by the exact integral: Recommendation ITU-R P.526-16 (11/2025), Annex 1, section 4.1.</summary>
internal static class ExactKnifeEdge
{
    /// <summary>v of an edge from heights and distances, equation (26).</summary>
    /// <param name="heightMetres">h, height of the edge over the straight line, metres; below 0 where the line is clear.</param>
    /// <param name="firstMetres">d1, from one end to the edge along the line, metres, above 0.</param>
    /// <param name="secondMetres">d2, from the edge to the other end, metres, above 0.</param>
    /// <param name="wavelengthMetres">λ, metres, above 0.</param>
    internal static double Parameter(double heightMetres, double firstMetres, double secondMetres, double wavelengthMetres) =>
        heightMetres * Math.Sqrt(2 / wavelengthMetres * ((1 / firstMetres) + (1 / secondMetres)));

    /// <summary>Loss of the edge from the Fresnel integrals, equation (30) (number from memory), ripples and all.</summary>
    /// <param name="v">Parameter of the edge, no unit.</param>
    /// <returns>dB over free space; down to −1.4 where the edge's wave adds to a clear line.</returns>
    internal static double LossDb(double v) => -20 * Math.Log10(Complex.Abs(FresnelIntegral.ShareBeyond(v)));
}
