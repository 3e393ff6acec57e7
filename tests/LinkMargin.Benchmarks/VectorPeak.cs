using System.Diagnostics;
using System.Runtime.Intrinsics;

namespace LinkMargin.Benchmarks;

/// <summary>How much arithmetic one core's vector units do at most: fused multiply-adds that wait for nothing.</summary>
internal static class VectorPeak
{
    private const int Chains = 12; // more than such an operation takes steps, times the units that do it
    private const int Rounds = 20_000_000;

    /// <summary>Operations a second, a multiply and an add being two; the best of some rounds.</summary>
    internal static double OperationsPerSecond()
    {
        double best = 0;
        for (int i = 0; i < 5; i++)
        {
            var watch = Stopwatch.StartNew();
            double sink = Run();
            best = Math.Max(best, sink == 0 ? 0 : 2.0 * Vector512<double>.Count * Chains * Rounds / watch.Elapsed.TotalSeconds);
        }

        return best;
    }

    private static double Run()
    {
        Vector512<double> x = Vector512.Create(0.999999), y = Vector512.Create(1e-6);
        Vector512<double> a = y, b = y, c = y, d = y, e = y, f = y, g = y, h = y, i = y, j = y, k = y, l = y;
        for (int round = 0; round < Rounds; round++)
        {
            a = Vector512.FusedMultiplyAdd(a, x, y);
            b = Vector512.FusedMultiplyAdd(b, x, y);
            c = Vector512.FusedMultiplyAdd(c, x, y);
            d = Vector512.FusedMultiplyAdd(d, x, y);
            e = Vector512.FusedMultiplyAdd(e, x, y);
            f = Vector512.FusedMultiplyAdd(f, x, y);
            g = Vector512.FusedMultiplyAdd(g, x, y);
            h = Vector512.FusedMultiplyAdd(h, x, y);
            i = Vector512.FusedMultiplyAdd(i, x, y);
            j = Vector512.FusedMultiplyAdd(j, x, y);
            k = Vector512.FusedMultiplyAdd(k, x, y);
            l = Vector512.FusedMultiplyAdd(l, x, y);
        }

        return Vector512.Sum(a + b + c + d + e + f + g + h + i + j + k + l);
    }
}
