using MathNet.Numerics.Integration;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// Owen's function T(h, a) = 1/2π · ∫₀ᵃ exp(−h²(1 + x²)/2)/(1 + x²) dx: D. B. Owen, Tables for computing bivariate normal
/// probabilities, Annals of Mathematical Statistics 27(4), 1956, from memory.
/// </summary>
internal static class OwensT
{
    // Enough for 1e-10: up to a = 1 the integrand is smooth, and wider than the rule's steps wherever it is not negligible.
    private const int Order = 64;

    /// <summary>T(h, a).</summary>
    /// <param name="h">Any number.</param>
    /// <param name="a">0 to 1.</param>
    internal static double Of(double h, double a) => a <= 0 ? 0 : GaussLegendreRule.Integrate(
        x => Math.Exp(-h * h * (1 + (x * x)) / 2) / (1 + (x * x)), 0, a, Order) / (2 * Math.PI);

    /// <summary>
    /// The mean of p·(1 − p), with p the probability that a normal quantity is above 0, once a share ρ of its variance is
    /// explained: 2·T(h, √((1 − ρ)/(1 + ρ))), from P(X &lt; h, Y &lt; h) of two normal quantities of correlation ρ. With nothing
    /// explained it is Φ(h)·(1 − Φ(h)), with everything explained 0.
    /// </summary>
    /// <param name="h">The quantity's mean over its standard deviation.</param>
    /// <param name="share">The share of the variance that is explained, 0 to 1.</param>
    internal static double UncertaintyLeft(double h, double share) => 2 * Of(h, Math.Sqrt((1 - share) / (1 + share)));
}
