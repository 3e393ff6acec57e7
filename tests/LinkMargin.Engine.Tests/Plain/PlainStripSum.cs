using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Plain;

/// <summary>
/// Equivalence reference of <see cref="StripSum"/>, an edge at a time, to 1e-9 dB. It is the same method and shows only that
/// working four edges at once changes nothing; whether the method is right is for <see cref="Judges.FrontSumApertureTests"/>.
/// </summary>
internal static class PlainStripSum
{
    // Differences of v² from which two edges have nothing to do with each other: e^(−δ²/2) is below 1e-4.
    private const double Unrelated = 2.8;

    private const int MostOnStack = 128;

    /// <summary>Mean power, as a share of what arrives with nothing in the way.</summary>
    /// <param name="edges">Where strips meet, v, in order, each within reach of the line at 0.</param>
    /// <param name="amplitudes">Amplitude of each strip, 0 to 1, one more than edges.</param>
    /// <param name="reach">How far out the front reaches.</param>
    internal static double MeanPower(ReadOnlySpan<double> edges, ReadOnlySpan<double> amplitudes, FrontReach reach)
    {
        int line = 0;
        double most = amplitudes[0];
        for (int i = 0; i < edges.Length; i++)
        {
            line += edges[i] <= 0 ? 1 : 0;
            most = Math.Max(most, amplitudes[i + 1]);
        }

        double inStep = amplitudes[line];
        double scattered = Scattered(edges[line..], amplitudes[line..], false, reach, ref inStep)
            + Scattered(edges[..line], amplitudes[..(line + 1)], true, reach, ref inStep);

        // Scattered waves are an estimate of their own: no mean is above what the clearest strip alone would give.
        return Math.Min(most * most, (inStep * inStep) + scattered);
    }

    // Power of the scattered waves of one side's edges, the nearest to the line first or last; adds what they send in step.
    private static double Scattered(
        ReadOnlySpan<double> edges, ReadOnlySpan<double> amplitudes, bool nearestIsLast, FrontReach reach, ref double inStep)
    {
        Span<double> squares = edges.Length <= MostOnStack ? stackalloc double[edges.Length] : new double[edges.Length];
        Span<double> waves = edges.Length <= MostOnStack ? stackalloc double[edges.Length] : new double[edges.Length];
        double scattered = 0;
        int count = 0;
        for (int i = 0; i < edges.Length; i++)
        {
            int edge = nearestIsLast ? edges.Length - 1 - i : i;
            double step = amplitudes[edge + 1] - amplitudes[edge];
            if (step == 0)
            {
                continue;
            }

            step = nearestIsLast ? -step : step;
            (double part, double rest) = PlainEdgeKernel.Beyond(Math.Abs(edges[edge]), reach);
            inStep += step * part;
            double wave = step * rest, square = edges[edge] * edges[edge];
            scattered += wave * wave;
            for (int other = count - 1; other >= 0 && square - squares[other] < Unrelated; other--)
            {
                double phase = Math.PI / 2 * (square - squares[other]);
                scattered += 2 * wave * waves[other] * Math.Exp(-phase * phase / 2);
            }

            squares[count] = square;
            waves[count++] = wave;
        }

        return scattered;
    }
}
