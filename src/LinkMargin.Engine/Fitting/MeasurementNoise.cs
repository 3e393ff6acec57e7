using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Fitting;

/// <summary>What parts a measurement from the model.</summary>
public static class MeasurementNoise
{
    /// <summary>
    /// One standard deviation, dB: what the model leaves out, what fading leaves in the mean of some samples, and what
    /// differs from crossing to crossing. A path that crosses a material k times changes by k dB for each dB of shift, and
    /// k crossings, each by itself, add k variances: so the variance goes with the gradient, not with its square.
    /// </summary>
    /// <param name="spreads">The spreads.</param>
    /// <param name="sampleCount">How many samples the measurement is the mean of, at least 1.</param>
    /// <param name="gradient">How the path loss changes with each material's shift.</param>
    /// <param name="materialSpreadsDb">The whole spread of each material, dB.</param>
    public static double Db(
        Spreads spreads, int sampleCount, ReadOnlySpan<double> gradient, ReadOnlySpan<double> materialSpreadsDb)
    {
        ArgumentNullException.ThrowIfNull(spreads);
        ArgumentOutOfRangeException.ThrowIfLessThan(sampleCount, 1);
        ArgumentOutOfRangeException.ThrowIfNotEqual(gradient.Length, materialSpreadsDb.Length);
        double variance = (spreads.ModelDb * spreads.ModelDb) + (spreads.MeasurementDb * spreads.MeasurementDb / sampleCount);
        for (int m = 0; m < gradient.Length; m++)
        {
            double each = spreads.EachCrossingDb(materialSpreadsDb[m]);
            variance += Math.Abs(gradient[m]) * each * each;
        }

        return Math.Sqrt(variance);
    }
}
