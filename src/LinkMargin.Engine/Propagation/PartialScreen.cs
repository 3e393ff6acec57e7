using System.Numerics;

namespace LinkMargin.Engine.Propagation;

/// <summary>
/// The field behind a rectangular screen that lets part of it through. Own derivation from the aperture form of
/// Recommendation ITU-R P.526-16 (11/2025), Annex 1, section 5.2.1.1 (rectangular aperture, Fresnel integral method) and
/// Babinet's principle.
/// <para>
/// Kirchhoff: the field behind a plane is the integral over it of what stands there. Everything beside the screen is there
/// with amplitude 1, the screen with τ, so E/E0 = 1 − (1 − τ)·A, with A the field through an opening where the screen is,
/// over the free field. In Fresnel's approximation A = X·Y, X = 1 − F(v_left) − F(v_right), Y likewise, F(v) that of
/// <see cref="KnifeEdge.Coefficient"/>. So: no end in sight A = 1, E = τ; no screen A = 0, E = 1; on the edge of a half plane
/// A = 1/2, E = (1 + τ)/2.
/// </para>
/// <para>
/// A margin wants the mean of |E|² over places a wavelength or so apart, without the ripple. With B = 1 − A what passes
/// beside, E = τ + (1 − τ)·B and the mean is τ² + 2τ(1 − τ)·⟨Re B⟩ + (1 − τ)²·⟨|B|²⟩. For one edge ⟨|B|²⟩ is a², a = 10^(−J/20)
/// the smooth amplitude of P.526 equation (31), and ⟨Re B⟩ is G = a² + κ·(a − a²): on the edge and in the clear the waves
/// beside and through are in step (κ = 1, G = a), while in the shadow their phase turns with v² and only powers add (κ → 0,
/// G = a²). κ = e^{−2v²} for v above 0 follows Re F to 0.06 up to its first zero. Two edges of an axis are independent of one
/// another: ⟨X⟩ = 1 − G1 − G2 and ⟨|X|²⟩ = ⟨X⟩² + Σ(a² − G²), held to ⟨X⟩ so that a screen too narrow to cast a shadow
/// does not scatter either; the two axes are independent, so ⟨A⟩ and ⟨|A|²⟩ are products.
/// </para>
/// <para>
/// The outcome is continuous, never falls when an edge draws back or τ grows, is never above 1, is exactly J(v) for an opaque
/// half plane and tends to the J_av of section 5.1 deep behind an opaque screen.
/// </para>
/// </summary>
public static class PartialScreen
{
    /// <summary>E/E0, the complex field on the line behind the screen over that without it.</summary>
    /// <param name="transmission">τ, complex field transmission of the screen's material, magnitude 1 or less.</param>
    /// <param name="edges">Where the screen's edges lie.</param>
    public static Complex Field(Complex transmission, in ScreenEdges edges)
    {
        Complex x = Complex.One - KnifeEdge.Coefficient(edges.Left) - KnifeEdge.Coefficient(edges.Right);
        Complex y = Complex.One - KnifeEdge.Coefficient(edges.Bottom) - KnifeEdge.Coefficient(edges.Top);
        return Complex.One - ((Complex.One - transmission) * x * y);
    }

    /// <summary>Local mean of |E/E0|², without ripple.</summary>
    /// <param name="amplitude">|τ|, field transmission of the screen's material, 0 to 1: 10^(−loss in dB/20).</param>
    /// <param name="edges">Where the screen's edges lie.</param>
    /// <returns>A power ratio, |τ|² to 1.</returns>
    public static double MeanPowerRatio(double amplitude, in ScreenEdges edges)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(amplitude);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(amplitude, 1);
        (double x, double squaredX) = Axis(edges.Left, edges.Right);
        (double y, double squaredY) = Axis(edges.Bottom, edges.Top);
        double beside = 1 - (x * y), squared = 1 - (2 * x * y) + (squaredX * squaredY), rest = 1 - amplitude;
        return (amplitude * amplitude) + (2 * amplitude * rest * beside) + (rest * rest * squared);
    }

    /// <summary>Loss of a screen in dB, from the loss of its material.</summary>
    /// <param name="throughLossDb">Loss of a wave that goes through the screen's material, dB, 0 or more.</param>
    /// <param name="edges">Where the screen's edges lie.</param>
    /// <returns>dB, 0 to the material's own loss.</returns>
    public static double MeanLossDb(double throughLossDb, in ScreenEdges edges)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(throughLossDb);
        return Math.Max(0, LayeredSlab.LossDbOf(MeanPowerRatio(Math.Pow(10, -throughLossDb / 20), edges)));
    }

    /// <summary>⟨X⟩ and ⟨|X|²⟩ of one axis.</summary>
    private static (double Mean, double MeanSquare) Axis(double first, double second)
    {
        (double a1, double g1) = Edge(first);
        (double a2, double g2) = Edge(second);
        double mean = Math.Clamp(1 - g1 - g2, 0, 1);
        double scatter = (a1 * a1) - (g1 * g1) + (a2 * a2) - (g2 * g2);
        return (mean, Math.Min((mean * mean) + scatter, mean));
    }

    /// <summary>a and G of one edge.</summary>
    private static (double Amplitude, double InStep) Edge(double v)
    {
        double a = KnifeEdge.SmoothAmplitude(v), kappa = v > 0 ? Math.Exp(-2 * v * v) : 1;
        return (a, (a * a) + (kappa * (a - (a * a))));
    }
}
