namespace LinkMargin.Engine.Propagation;

/// <summary>
/// How the field at a receiver is shared out over the wave front beside the straight line, for local means.
/// <para>
/// Places beside the line are measured by v = √2·h/R1 (Recommendation ITU-R P.526-16, section 4.1, equation (26), with the
/// first Fresnel radius R1). Of a front cut off below an edge at v the receiver keeps the amplitude 10^(−J(v)/20), with
/// J(v) = 6.9 + 20 log(√((v − 0.1)² + 1) + v − 0.1) of equation (31). On the shadow side this is monotone and free of
/// ripples, so its difference between two places is a share of the front; on the lit side ripples of a wavelength's breadth
/// average out, and almost nothing is lost from v = −0.78 on.
/// </para>
/// </summary>
internal static class EdgeKernel
{
    /// <summary>
    /// From this v on the front is not looked at any more: J is 25 dB there, and what comes from farther out is a way round of
    /// its own or part of the diffuse field.
    /// </summary>
    internal const double Reach = 4;

    // From here to the reach shares fade out, so that an edge that comes into reach makes no step.
    private const double FadeFrom = 3;

    // J(0) is 6.03 dB by the formula and 6.02 exactly; the front is shared evenly on the line itself.
    private static readonly double AtZero = Shape(0);

    /// <summary>
    /// Amplitude that arrives from beyond v on one side, v ≥ 0: 1/2 on the line, falling as 0.225/v; 0 from the reach on.
    /// </summary>
    internal static double Beyond(double v)
    {
        if (v >= Reach)
        {
            return 0;
        }

        double whole = Edge(v);
        if (v <= FadeFrom)
        {
            return whole;
        }

        double fade = (v - FadeFrom) / (Reach - FadeFrom);
        return whole * (1 - (fade * fade * (3 - (2 * fade))));
    }

    /// <summary>Amplitude behind a knife edge at v ≥ 0, however far out: 10^(−J(v)/20), scaled to 1/2 on the line.</summary>
    internal static double Edge(double v) => 0.5 * Shape(v) / AtZero;

    /// <summary>Amplitude that arrives from above v, −∞ to ∞: near 1 far below the line, 1/2 on it, near 0 far above.</summary>
    internal static double Above(double v) => v >= 0 ? Beyond(v) : 1 - Beyond(-v);

    /// <summary>
    /// Amplitude lost to a lit receiver by an obstacle from v outwards, v ≥ 0: 1/2 on the line, 0 from v = 0.78 on: one less
    /// the amplitude of J(−v), joined up smoothly where J has its guard.
    /// </summary>
    internal static double LostBeyond(double v)
    {
        const double Guard = 0.78; // P.526-16, below equation (31): J(v) holds for v > −0.78
        if (v >= Guard)
        {
            return 0;
        }

        // Scaled so that it is exactly 1/2 at 0 and 0 at the guard.
        double zero = 1 - (0.5 * Shape(0) / AtZero);
        double end = 1 - (0.5 * Shape(-Guard) / AtZero);
        return 0.5 * (1 - (0.5 * Shape(-v) / AtZero) - end) / (zero - end);
    }

    /// <summary>Share of the front between two places, lower first; either may be infinite.</summary>
    internal static double Between(double low, double high) => Math.Max(0, Above(low) - Above(high));

    private static double Shape(double v)
    {
        if (double.IsPositiveInfinity(v))
        {
            return 0;
        }

        double w = v - 0.1;
        return 1 / (Math.Sqrt((w * w) + 1) + w);
    }
}
