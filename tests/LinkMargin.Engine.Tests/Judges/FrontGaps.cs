using System.Globalization;
using Xunit.Abstractions;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>Gaps between the front sum and an integral over many cases, held to three figures.</summary>
internal static class FrontGaps
{
    internal static void Hold(
        ITestOutputHelper output, IReadOnlyList<(double Db, string Where)> gaps, double meanDb, double rmsDb, double singleDb)
    {
        double mean = gaps.Average(gap => gap.Db), rms = Math.Sqrt(gaps.Average(gap => gap.Db * gap.Db));
        (double worst, string where) = gaps.MaxBy(gap => Math.Abs(gap.Db));
        string reported = string.Create(
            CultureInfo.InvariantCulture, $"{gaps.Count} cases: mean {mean:+0.00;-0.00} dB, rms {rms:0.00} dB, worst {worst:+0.00;-0.00} dB ({where})");
        output.WriteLine(reported);
        Assert.True(Math.Abs(mean) <= meanDb && rms <= rmsDb && Math.Abs(worst) <= singleDb, reported);
    }
}
