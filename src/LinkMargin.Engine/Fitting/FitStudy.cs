namespace LinkMargin.Engine.Fitting;

/// <summary>A fit with everything a careful experimenter would want to see beside it.</summary>
public sealed class FitStudy
{
    private readonly bool[] counted;

    private FitStudy(LossFit fit, Baseline freeSpace, Baseline freeExponent)
    {
        (Fit, FreeSpace, FreeExponent) = (fit, freeSpace, freeExponent);
        LeaveOneOutDb = LeaveOneOut.ResidualsDb(fit);
        Goodness = FitGoodness.Of(fit);
        Indistinct = IndistinctPair.Of(fit);
        counted = [.. fit.Residuals.Select((r, i) => r.Measurement.IsHeard && !r.LooksBad && LeaveOneOutDb[i] is not null)];
    }

    /// <summary>The fit.</summary>
    public LossFit Fit { get; }

    /// <summary>Free space with an offset for each pair of devices.</summary>
    public Baseline FreeSpace { get; }

    /// <summary>A law of distance with free exponent, with the same offsets.</summary>
    public Baseline FreeExponent { get; }

    /// <summary>Residuals of the fit on measurements it has not seen, dB; null where that says nothing.</summary>
    public IReadOnlyList<double?> LeaveOneOutDb { get; }

    /// <summary>Whether the measurements scatter as they should.</summary>
    public FitGoodness Goodness { get; }

    /// <summary>What the measurements do not tell apart, worst first.</summary>
    public IReadOnlyList<IndistinctPair> Indistinct { get; }

    /// <summary>
    /// How many measurements the rms figures are over, the same for the fit and both plain laws: heard, not looking bad to the
    /// fit, and not the only one of their devices.
    /// </summary>
    public int UsedMeasurements => counted.Count(c => c);

    /// <summary>Rms of the residuals in sample, dB; NaN where none counts.</summary>
    /// <param name="fit">The fit, or that of a plain law.</param>
    public double RmsInSampleDb(LossFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return Rms(i => fit.Residuals[i].ResidualDb);
    }

    /// <summary>Rms of the residuals on measurements left out, dB; NaN where none counts.</summary>
    /// <param name="leftOutDb">Those residuals, of the fit or of a plain law.</param>
    public double RmsLeaveOneOutDb(IReadOnlyList<double?> leftOutDb)
    {
        ArgumentNullException.ThrowIfNull(leftOutDb);
        return Rms(i => leftOutDb[i]!.Value);
    }

    /// <summary>Fits, and judges the fit by several measures.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="distancesMetres">Length of each link of its model, metres.</param>
    /// <param name="freeSpaceDb">Free-space loss of each, dB.</param>
    public static FitStudy Of(FitProblem problem, IReadOnlyList<double> distancesMetres, IReadOnlyList<double> freeSpaceDb)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return new FitStudy(
            LossFit.Of(problem),
            Baseline.Of(DistancePowerLaw.FreeSpace(distancesMetres, freeSpaceDb), problem),
            Baseline.Of(DistancePowerLaw.FreeExponent(distancesMetres, freeSpaceDb), problem));
    }

    private double Rms(Func<int, double> residualDb)
    {
        double[] squares = [.. Enumerable.Range(0, counted.Length).Where(i => counted[i]).Select(i => Math.Pow(residualDb(i), 2))];
        return squares.Length == 0 ? double.NaN : Math.Sqrt(squares.Average());
    }
}
