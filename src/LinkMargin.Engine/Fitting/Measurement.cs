using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Fitting;

/// <summary>What was received on one link with one pair of devices: one row that a person wrote, or the mean of several.</summary>
/// <param name="Transmitter">Where the transmitter was.</param>
/// <param name="Receiver">Where the receiver was.</param>
/// <param name="Devices">The pair of devices.</param>
/// <param name="LevelDbm">The level received, dBm; where nothing was heard, the level below which nothing can be heard.</param>
/// <param name="IsHeard">Whether there was a level.</param>
public sealed record Measurement(MeasurementEnd Transmitter, MeasurementEnd Receiver, string Devices, double LevelDbm, bool IsHeard)
{
    /// <summary>How many samples it is the mean of.</summary>
    public int SampleCount { get; init; } = 1;

    /// <summary>The lines of the file it is from.</summary>
    public IReadOnlyList<int> Lines { get; init; } = [];
}

/// <summary>Where one end of a measurement was.</summary>
/// <param name="Name">The spot or seat it was at, or its coordinates as written.</param>
/// <param name="LevelIndex">The level it was on; 0 is the lowest.</param>
/// <param name="Plan">Where on the plan.</param>
/// <param name="HeightMetres">Above the level's floor, metres.</param>
public sealed record MeasurementEnd(string Name, int LevelIndex, Point2 Plan, double HeightMetres)
{
    /// <summary>The seat it was at; null where it was at none.</summary>
    public Seat? Seat { get; init; }

    /// <summary>The spot it was at; null where it was at none.</summary>
    public Spot? Spot { get; init; }

    /// <summary>Where that is in a house.</summary>
    public Point3 PositionIn(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        return Plan.At(house.Levels[LevelIndex].ElevationMetres + HeightMetres);
    }
}

/// <summary>How far a measurement may be from the model.</summary>
public static class MeasurementNoise
{
    /// <summary>
    /// One standard deviation, dB: what the model leaves out, what fading leaves in the mean of some samples, and what
    /// differs from crossing to crossing. A path that crosses a material k times changes by k dB for each dB of shift, and
    /// k independent crossings add k variances. So the variance is proportional to the gradient, not to its square.
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

/// <summary>The cost of a measurement at a predicted level: minus the logarithm of its likelihood, and how that changes.</summary>
/// <param name="Value">The cost itself.</param>
/// <param name="Slope">Its derivative by the predicted level, 1/dB.</param>
/// <param name="Curvature">Its second derivative, 1/dB²; below 0 where a measurement may well be bad.</param>
/// <param name="Weight">A curvature never below 0, so that a step lowers the cost, 1/dB².</param>
/// <param name="ProbabilityBad">How likely the measurement is a bad one, 0 to 1.</param>
internal readonly record struct MeasurementCost(double Value, double Slope, double Curvature, double Weight, double ProbabilityBad)
{
    /// <summary>Computes it.</summary>
    /// <param name="measurement">The measurement.</param>
    /// <param name="predictedDbm">The level predicted, dBm.</param>
    /// <param name="noiseDb">The noise of a good measurement, dB.</param>
    /// <param name="bad">How many are bad, and by how much.</param>
    internal static MeasurementCost Of(in FitMeasurement measurement, double predictedDbm, double noiseDb, BadMeasurements bad)
    {
        double apart = measurement.LevelDbm - predictedDbm, precision = 1 / (noiseDb * noiseDb);
        double good = double.LogP1(-bad.Share), wrong = Math.Log(bad.Share);
        double density = good + NormalTail.LogDensity(apart / noiseDb) - Math.Log(noiseDb);
        if (measurement.IsHeard)
        {
            double badDensity = bad.Share > 0 ? wrong + Math.Log(bad.Density) : double.NegativeInfinity;
            double both = LogOfSum(density, badDensity), shareBad = Math.Exp(badDensity - both);
            double weight = (1 - shareBad) * precision, twist = apart * precision;
            return new(-both, -apart * weight, weight - (shareBad * (1 - shareBad) * twist * twist), weight, shareBad);
        }

        // The probability of a level below the bound; slope and curvature are those of its −ln by the prediction.
        double badTail = bad.Share > 0 ? wrong + Math.Log(BadMeasurements.ChanceOfSilence) : double.NegativeInfinity;
        double tail = LogOfSum(good + NormalTail.LogTail(apart / noiseDb), badTail), hazard = Math.Exp(density - tail);
        double curvature = (hazard * hazard) + (hazard * apart * precision);
        return new(-tail, hazard, curvature, Math.Clamp(curvature, 0, precision), Math.Exp(badTail - tail));
    }

    /// <summary>ln(eᵃ + eᵇ).</summary>
    private static double LogOfSum(double a, double b)
    {
        double larger = Math.Max(a, b), smaller = Math.Min(a, b);
        return double.IsNegativeInfinity(smaller) ? larger : larger + double.LogP1(Math.Exp(smaller - larger));
    }
}
