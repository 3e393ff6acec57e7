using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Plain;

/// <summary>
/// Equivalence reference of <see cref="EdgeKernel.Beyond"/>, an edge at a time, to the same bits. It says nothing about whether
/// the wave is right: see <see cref="Judges.FrontSumApertureTests"/>.
/// </summary>
internal static class PlainEdgeKernel
{
    private const double Guard = 0.78;

    /// <summary>The wave from beyond v ≥ 0 on one side, in a front of a reach: the part in step with the line, and the rest.</summary>
    internal static (double InStep, double Scattered) Beyond(double v, FrontReach reach)
    {
        if (v >= reach.End)
        {
            return (0, 0);
        }

        double edge = 0.5 * Shape(v) / Shape(0), faded = Math.Clamp((v - reach.FadeFrom) / (reach.End - reach.FadeFrom), 0, 1);
        double power = edge * edge * (1 - (faded * faded * (3 - (2 * faded)))), left = 1 - LostBeyond(v);
        double inStep = (1 + power - (left * left)) / 2;
        return (inStep, Math.Sqrt(Math.Max(0, power - (inStep * inStep))));
    }

    private static double LostBeyond(double v)
    {
        double Lost(double at) => 1 - (0.5 * Shape(at) / Shape(0));
        return v >= Guard ? 0 : 0.5 * (Lost(-v) - Lost(-Guard)) / (Lost(0) - Lost(-Guard));
    }

    // 10^(−J(v)/20), but for a factor.
    private static double Shape(double v)
    {
        double w = v - 0.1;
        return 1 / (Math.Sqrt((w * w) + 1) + w);
    }
}
