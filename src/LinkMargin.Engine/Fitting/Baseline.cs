namespace LinkMargin.Engine.Fitting;

/// <summary>A plain law fitted to the same measurements, with the same offsets for the same devices.</summary>
/// <param name="Fit">Its fit.</param>
/// <param name="LeaveOneOutDb">Its residuals on measurements it has not seen, dB.</param>
public sealed record Baseline(LossFit Fit, IReadOnlyList<double?> LeaveOneOutDb)
{
    /// <summary>
    /// Its scatter is no doubt of the stated noise, so it is fitted as if every measurement were good and the noise this: by
    /// least squares but for what the priors say. 8 dB: shadowing in houses, Recommendation ITU-R P.1238, from memory.
    /// </summary>
    private const double ScatterDb = 8;

    /// <summary>Fits a law.</summary>
    /// <param name="law">The law.</param>
    /// <param name="problem">Whose measurements and devices.</param>
    public static Baseline Of(DistancePowerLaw law, FitProblem problem)
    {
        ArgumentNullException.ThrowIfNull(law);
        ArgumentNullException.ThrowIfNull(problem);
        LossFit fit = LossFit.Of(new FitProblem(
            law, law.Priors, problem.Devices, [.. problem.Measurements.Select(r => r with { NoiseDb = ScatterDb })], BadMeasurements.None));
        return new Baseline(fit, LeaveOneOut.ResidualsDb(fit));
    }
}
