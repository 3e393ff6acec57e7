using System.Diagnostics;

namespace LinkMargin.Benchmarks;

/// <summary>How long something takes: good for ratios on one machine.</summary>
internal static class Stopwatches
{
    /// <summary>The mean time of as many runs as fill a while, after one that is not counted; the best of some such means.</summary>
    /// <param name="run">What to time.</param>
    /// <param name="atLeastSeconds">How long one round lasts at least.</param>
    /// <param name="rounds">How many rounds.</param>
    internal static double Seconds(Action run, double atLeastSeconds = 1, int rounds = 3)
    {
        run();
        double best = double.PositiveInfinity;
        for (int round = 0; round < rounds; round++)
        {
            int runs = 0;
            var watch = Stopwatch.StartNew();
            do
            {
                run();
                runs++;
            }
            while (watch.Elapsed.TotalSeconds < atLeastSeconds);
            best = Math.Min(best, watch.Elapsed.TotalSeconds / runs);
        }

        return best;
    }
}
