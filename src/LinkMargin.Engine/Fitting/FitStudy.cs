namespace LinkMargin.Engine.Fitting;

/// <summary>A fit with the checks that a careful experimenter would want to see.</summary>
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

    /// <summary>A distance power law with fitted exponent, with the same offsets.</summary>
    public Baseline FreeExponent { get; }

    /// <summary>Residuals of the fit on measurements it has not seen, dB; null where that says nothing.</summary>
    public IReadOnlyList<double?> LeaveOneOutDb { get; }

    /// <summary>Whether the measurements scatter as they should.</summary>
    public FitGoodness Goodness { get; }

    /// <summary>What the measurements cannot tell apart, worst first.</summary>
    public IReadOnlyList<IndistinctPair> Indistinct { get; }

    /// <summary>
    /// How many measurements the rms figures cover, the same for the fit and both plain laws: heard, not looking bad to the
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
    /// <param name="leaveOneOutDb">Those residuals, of the fit or of a plain law.</param>
    public double RmsLeaveOneOutDb(IReadOnlyList<double?> leaveOneOutDb)
    {
        ArgumentNullException.ThrowIfNull(leaveOneOutDb);
        return Rms(i => leaveOneOutDb[i]!.Value);
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

/// <summary>Two unknowns that the measurements cannot tell apart: a change of one can be made up by the other.</summary>
/// <param name="First">A material or a pair of devices.</param>
/// <param name="Second">Another.</param>
/// <param name="Correlation">Of their remaining errors, −1 to 1: near −1 their sum is known, but not how it is divided.</param>
public sealed record IndistinctPair(string First, string Second, double Correlation)
{
    /// <summary>From this magnitude on they share half of their variance or more.</summary>
    public const double LeastCorrelation = 0.7;

    /// <summary>All pairs of a fit, worst first.</summary>
    public static IReadOnlyList<IndistinctPair> Of(LossFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        int count = fit.Materials.Count + fit.Devices.Count;
        double[] variances = [.. Enumerable.Range(0, count).Select(i => fit.CovarianceDb2(i, i))];
        List<IndistinctPair> pairs = [];
        for (int i = 0; i < count; i++)
        {
            for (int j = i + 1; j < count; j++)
            {
                // Thousands of devices make millions of pairs, so the two variances are not computed again for each.
                double both = Math.Sqrt(variances[i] * variances[j]);
                double correlation = both > 0 ? Math.Clamp(fit.CovarianceDb2(i, j) / both, -1, 1) : 0;
                if (Math.Abs(correlation) >= LeastCorrelation)
                {
                    pairs.Add(new IndistinctPair(fit.Problem.NameOf(i), fit.Problem.NameOf(j), correlation));
                }
            }
        }

        return [.. pairs.OrderByDescending(pair => Math.Abs(pair.Correlation))];
    }
}
