using MathNet.Numerics.Distributions;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// The standard normal distribution function from a table, for the millions of values that draws need: cubics between the library's values,
/// with the density as their slope. At this step they are off by 1e-10 at most (h⁴/384 times the greatest fourth derivative, 0.55).
/// </summary>
internal static class NormalTable
{
    private const int StepsPerSpread = 64;

    /// <summary>Beyond this many spreads less than 1e-17 is left.</summary>
    private const double End = 8.5;

    private const int Last = (int)(2 * End * StepsPerSpread);

    private static readonly (double Value, double Slope)[] Knots = [.. Enumerable.Range(0, Last + 1).Select(Knot)];

    /// <summary>Share of a standard normal distribution below a value, 0 to 1.</summary>
    /// <param name="z">Spreads above the middle; anything but NaN.</param>
    internal static double Below(double z)
    {
        double place = (z + End) * StepsPerSpread;
        if (!(place > 0 && place < Last))
        {
            return z > 0 ? 1 : 0;
        }

        int knot = (int)place;
        (double low, double slopeLow) = Knots[knot];
        (double high, double slopeHigh) = Knots[knot + 1];
        double t = place - knot, rise = high - low;
        return low + (t * (slopeLow + (t * ((3 * rise) - (2 * slopeLow) - slopeHigh + (t * (slopeLow + slopeHigh - (2 * rise)))))));
    }

    // Slopes are per step.
    private static (double Value, double Slope) Knot(int knot)
    {
        double z = ((double)knot / StepsPerSpread) - End;
        return (Normal.CDF(0, 1, z), Normal.PDF(0, 1, z) / StepsPerSpread);
    }
}
