using System.Runtime.Intrinsics;
using LinkMargin.Engine.Propagation;

namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// The wave that an edge beside the straight line sends to a receiver, for local means.
/// <para>
/// Places beside the line are measured by v = √2·h/R1 (Recommendation ITU-R P.526-16, section 4.1, equation (26), with the
/// first Fresnel radius R1). By Kirchhoff's integral the field from everything beyond v ≥ 0 on one side is B(v): 1/2 on the
/// line, farther out the wave of an edge at v. A single knife edge fixes what a local mean keeps of it. In its shadow the field
/// is B, so ⟨|B|²⟩ = a², with a = 10^(−J(v)/20) and J(v) of equation (31) (<see cref="KnifeEdge.LossDb"/>). On the lit side
/// the field is 1 − B, so 1 − 2⟨B⟩ + a² is the power that J(−v) leaves. The part ⟨B⟩ is in phase with the line's own wave;
/// the rest, √(a² − ⟨B⟩²), has a phase that changes too fast with position for a mean to keep.
/// </para>
/// </summary>
internal static class EdgeKernel
{
    /// <summary>
    /// A usual front ends at this v: J is 25 dB there, and what comes from farther out is a diffracted path of its own or part of the
    /// diffuse field.
    /// </summary>
    internal const double Reach = 4;

    /// <summary>From this v to the reach edges fade out, and paths of their own fade in, so that neither causes a jump.</summary>
    internal const double ApartFrom = 3;

    // From this v outwards a lit receiver loses nothing: J(−v) is 0.
    private const double Guard = -KnifeEdge.LeastParameter;

    // J(0) is 6.03 dB by the formula and 6.02 exactly; on the line itself each side has exactly half the front.
    private static readonly double AtZero = Shape(0);

    // Amplitude lost to a knife edge on the line and to one at the guard, before LostBeyond is scaled to 1/2 and 0 there.
    private static readonly double LostAtZero = 1 - (0.5 * Shape(0) / AtZero);
    private static readonly double LostAtGuard = 1 - (0.5 * Shape(-Guard) / AtZero);

    /// <summary>Amplitude behind a knife edge at v ≥ 0, however far out: 10^(−J(v)/20), scaled to 1/2 on the line.</summary>
    internal static double Edge(double v) => 0.5 * Shape(v) / AtZero;

    /// <summary>Share of an edge's power at v ≥ 0 that counts as a path of its own beside a usual front: 0 within reach, 1 beyond.</summary>
    internal static double Apart(double v) => FrontReach.Usual.Apart(v);

    /// <summary>
    /// The waves of four edges from beyond v ≥ 0 on one side, in a front of a reach: the parts in phase with the line, and the rest.
    /// </summary>
    internal static (Vector256<double> InStep, Vector256<double> Scattered) Beyond(Vector256<double> v, in FrontReach reach)
    {
        var one = Vector256<double>.One;
        Vector256<double> half = Vector256.Create(0.5);
        Vector256<double> edge = half * Shape(v) / AtZero, power = edge * edge;
        if (Vector256.GreaterThanAny(v, Vector256.Create(reach.FadeFrom)))
        {
            Vector256<double> way = Vector256.Min(Vector256.Max((v - Vector256.Create(reach.FadeFrom)) / (reach.End - reach.FadeFrom), Vector256<double>.Zero), one);
            power *= one - (way * way * (Vector256.Create(3.0) - (2 * way)));
        }

        // Elsewhere what is lost is 0, and 1 is left.
        Vector256<double> left = one;
        Vector256<double> guarded = Vector256.LessThan(v, Vector256.Create(Guard));
        if (guarded != Vector256<double>.Zero)
        {
            Vector256<double> lost = half * (one - (half * Shape(-v) / AtZero) - Vector256.Create(LostAtGuard)) / (LostAtZero - LostAtGuard);
            left = Vector256.ConditionalSelect(guarded, one - lost, one);
        }

        Vector256<double> inStep = (one + power - (left * left)) / 2;
        Vector256<double> scattered = Vector256.Sqrt(Vector256.Max(Vector256<double>.Zero, power - (inStep * inStep)));
        Vector256<double> within = Vector256.LessThan(v, Vector256.Create(reach.End));
        return (inStep & within, scattered & within);
    }

    /// <summary>
    /// Amplitude that a single edge leaves of the field: that of its shadow where the line runs behind it by v, −∞ to ∞, and
    /// near 1 where the line is clear of it.
    /// </summary>
    internal static double Past(double v, in FrontReach reach) => v >= 0 ? Edge(v) * Math.Sqrt(1 - reach.Apart(v)) : 1 - LostBeyond(-v);

    // Amplitude lost to a lit receiver by an obstacle from v outwards, v ≥ 0: 1 minus the amplitude of J(−v), scaled so that
    // it is exactly 1/2 on the line and 0 where J has its guard.
    private static double LostBeyond(double v)
    {
        if (v >= Guard)
        {
            return 0;
        }

        return 0.5 * (1 - (0.5 * Shape(-v) / AtZero) - LostAtGuard) / (LostAtZero - LostAtGuard);
    }

    // 10^(−J(v)/20) apart from a factor.
    private static double Shape(double v) => 1 / KnifeEdge.InLogarithm(v);

    private static Vector256<double> Shape(Vector256<double> v) => Vector256<double>.One / KnifeEdge.InLogarithm(v);
}
