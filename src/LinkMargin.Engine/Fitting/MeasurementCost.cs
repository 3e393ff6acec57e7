namespace LinkMargin.Engine.Fitting;

/// <summary>What a measurement says against a predicted level: minus the logarithm of its likelihood, and how that changes.</summary>
/// <param name="Value">The cost itself.</param>
/// <param name="Slope">Its derivative by the predicted level, 1/dB.</param>
/// <param name="Curvature">Its second derivative, 1/dB²; below 0 where a measurement is half believed.</param>
/// <param name="Weight">A curvature never below 0 with which a step goes down, 1/dB².</param>
/// <param name="ProbabilityBad">How likely the measurement is a bad one, 0 to 1.</param>
internal readonly record struct MeasurementCost(double Value, double Slope, double Curvature, double Weight, double ProbabilityBad)
{
    /// <summary>Works it out.</summary>
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

        // The chance of a level below; slope and curvature are those of −ln of it by the prediction.
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
