using System.Runtime.Intrinsics;

namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// The local mean of the power that arrives past strips across a wave front, each with its own amplitude.
/// <para>
/// Kirchhoff's integral over strips is a sum over their edges: the field is the amplitude on the line and, for each edge, the
/// outward step of the amplitude times the wave B(v) from beyond it (<see cref="EdgeKernel.Beyond"/>). Over a few wavelengths
/// the parts in phase add as amplitudes. The scattered parts have no fixed phase to the line, nor to those of the other side
/// (the average of Recommendation ITU-R P.526-16, section 5.1), so their powers add. The phases of two edges on one side differ
/// by δ = π/2·(v1² − v2²), and a mean keeps e^(−δ²/2) of their product. So a strip narrowed to nothing has no effect, and an
/// opaque half plane is exactly J(v), a wide screen J_av.
/// </para>
/// </summary>
internal static class StripSum
{
    // Difference of v² from which two edges are independent: e^(−δ²/2) is below 1e-4.
    private const double Unrelated = 2.8;

    /// <summary>Mean power, as a share of what arrives without obstacles.</summary>
    /// <param name="edges">Where strips meet, v, in order, each within reach of the line at 0.</param>
    /// <param name="amplitudes">Amplitude of each strip, 0 to 1, one more than edges.</param>
    /// <param name="reach">How far out the front reaches.</param>
    internal static double MeanPower(ReadOnlySpan<double> edges, ReadOnlySpan<double> amplitudes, in FrontReach reach)
    {
        int room = WholeVectors(edges.Length);
        using Scratch scratch = Scratch.Open();
        Span<double> inStep = scratch.Of<double>(room), scattered = scratch.Of<double>(room);
        edges.CopyTo(scattered);
        scattered[edges.Length..].Clear();
        Waves(inStep, scattered, reach);
        return MeanPower(edges, amplitudes, inStep, scattered);
    }

    /// <summary>A count rounded up to whole vectors.</summary>
    internal static int WholeVectors(int count) => (count + 3) & ~3;

    /// <summary>The waves of edges, for one sum or several.</summary>
    /// <param name="inStep">Receives the parts in phase with the line; whole vectors.</param>
    /// <param name="scattered">Where the edges are, v; receives the rest of their waves.</param>
    /// <param name="reach">How far out the front reaches.</param>
    internal static void Waves(Span<double> inStep, Span<double> scattered, in FrontReach reach)
    {
        for (int i = 0; i < scattered.Length; i += 4)
        {
            (Vector256<double> part, Vector256<double> rest) = EdgeKernel.Beyond(Vector256.Abs(Vector256.LoadUnsafe(ref scattered[i])), reach);
            part.StoreUnsafe(ref inStep[i]);
            rest.StoreUnsafe(ref scattered[i]);
        }
    }

    /// <summary>Mean power from the waves of its edges, which are overwritten.</summary>
    internal static double MeanPower(ReadOnlySpan<double> edges, ReadOnlySpan<double> amplitudes, Span<double> inStep, Span<double> scattered)
    {
        if (edges.IsEmpty)
        {
            return amplitudes[0] * amplitudes[0];
        }

        int line = 0;
        double most = amplitudes[0];
        for (int i = 0; i < edges.Length; i++)
        {
            line += edges[i] <= 0 ? 1 : 0;
            most = Math.Max(most, amplitudes[i + 1]);
        }

        double field = amplitudes[line];
        Strips strips = new(edges, amplitudes, inStep, scattered);
        double power = OneSide(strips, line, edges.Length - line, 1, ref field) + OneSide(strips, line - 1, line, -1, ref field);

        // Scattered waves are an estimate: no mean is above what the strip of the greatest amplitude alone would give.
        return Math.Min(most * most, (field * field) + power);
    }

    // Power of the scattered waves of one side's edges, the nearest to the line first; adds their parts in phase to the field.
    private static double OneSide(in Strips strips, int nearest, int many, int onwards, ref double field)
    {
        ReadOnlySpan<double> edges = strips.Edges, amplitudes = strips.Amplitudes;
        Span<double> inStep = strips.InStep, scattered = strips.Scattered;

        // The squares and waves of the edges so far overwrite what has been read.
        Span<double> squares = inStep, waves = scattered;
        double power = 0;
        int next = nearest;
        for (int edge = nearest, k = 0; k < many; edge += onwards, k++)
        {
            double step = onwards * (amplitudes[edge + 1] - amplitudes[edge]);
            if (step == 0)
            {
                continue;
            }

            field += step * inStep[edge];
            double wave = step * scattered[edge], square = edges[edge] * edges[edge];
            power += wave * wave;
            for (int other = next - onwards; other != nearest - onwards && square - squares[other] < Unrelated; other -= onwards)
            {
                double phase = Math.PI / 2 * (square - squares[other]);
                power += 2 * wave * waves[other] * Math.Exp(-phase * phase / 2);
            }

            squares[next] = square;
            waves[next] = wave;
            next += onwards;
        }

        return power;
    }

    // The edges of a front, what lies between them, and the two parts of the wave from beyond each edge.
    private readonly ref struct Strips(
        ReadOnlySpan<double> edges, ReadOnlySpan<double> amplitudes, Span<double> inStep, Span<double> scattered)
    {
        public ReadOnlySpan<double> Edges { get; } = edges;

        public ReadOnlySpan<double> Amplitudes { get; } = amplitudes;

        public Span<double> InStep { get; } = inStep;

        public Span<double> Scattered { get; } = scattered;
    }
}
