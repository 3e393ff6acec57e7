namespace LinkMargin.Engine.Fitting;

/// <summary>
/// Losses of materials and offsets of devices, fitted to measurements: the maximum of the posterior. Priors are normal about the
/// tables; no loss goes below 0; measurements are good or bad (<see cref="BadMeasurements"/>); where nothing was heard, the
/// probability of a level below the bound counts. Spreads and correlations are those of a normal distribution with the posterior's
/// curvature at its maximum (Laplace's method); where a loss is held at 0 they are those it would have without the bound.
/// </summary>
public sealed class LossFit
{
    private readonly FitCovariance covariance;
    private readonly double[] scales;

    private LossFit(FitProblem problem, FitState state, bool converged)
    {
        (Problem, State, HasConverged) = (problem, state, converged);
        scales = [.. problem.Materials.Select(m => m.SpreadDb), .. problem.Devices.Select(d => d.SpreadDb)];
        covariance = state.Curvature(cost => cost.Curvature).Inverse();
        double[] shifts = FitState.ShiftsDb(problem, state.Unknowns);
        ShiftsDb = shifts;
        Materials = [.. problem.Materials.Select((m, i) => new FittedMaterial(m.Name, m.LossDb, m.SpreadDb, shifts[i], SpreadDb(i)))];
        int[] readingCounts = new int[problem.Devices.Count];
        foreach (FitMeasurement measurement in problem.Measurements)
        {
            readingCounts[measurement.Device]++;
        }

        Devices =
        [
            .. problem.Devices.Select((d, i) => new FittedDevice(
                d.Name,
                d.OffsetDbm + (d.SpreadDb * state.Unknowns[shifts.Length + i]),
                SpreadDb(shifts.Length + i),
                readingCounts[i])),
        ];
        Residuals =
        [
            .. problem.Measurements.Select((r, i) => new FitResidual(r, state.PredictedDbm[i], state.Costs[i].ProbabilityBad)),
        ];
    }

    /// <summary>The problem it solves.</summary>
    public FitProblem Problem { get; }

    /// <summary>Materials before and after, in the problem's order.</summary>
    public IReadOnlyList<FittedMaterial> Materials { get; }

    /// <summary>Devices, in the problem's order.</summary>
    public IReadOnlyList<FittedDevice> Devices { get; }

    /// <summary>Each measurement against the fit, in the problem's order.</summary>
    public IReadOnlyList<FitResidual> Residuals { get; }

    /// <summary>The materials' shifts alone, for a model that takes them, dB.</summary>
    public IReadOnlyList<double> ShiftsDb { get; }

    /// <summary>Whether the search converged.</summary>
    public bool HasConverged { get; }

    /// <summary>Where the search ended.</summary>
    internal FitState State { get; }

    /// <summary>Fits.</summary>
    public static LossFit Of(FitProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        (FitState state, bool converged) = FitSearch.FromPriors(problem);
        return new LossFit(problem, state, converged);
    }

    /// <summary>Covariance of two unknowns, dB²: materials first, then devices.</summary>
    public double CovarianceDb2(int first, int second) => covariance[first, second] * scales[first] * scales[second];

    /// <summary>Correlation of two unknowns, −1 to 1; 0 with one that is not fitted.</summary>
    public double Correlation(int first, int second)
    {
        double both = Math.Sqrt(CovarianceDb2(first, first) * CovarianceDb2(second, second));
        return both > 0 ? Math.Clamp(CovarianceDb2(first, second) / both, -1, 1) : 0;
    }

    /// <summary>The level predicted for a link, and its spread from the uncertainty of materials and devices.</summary>
    /// <param name="link">A link of the model, measured or not.</param>
    /// <param name="device">The pair of devices.</param>
    public (double LevelDbm, double SpreadDb) Predict(int link, int device)
    {
        int materials = Problem.Materials.Count;
        double[] shifts = [.. ShiftsDb], gradient = new double[materials];
        double level = Devices[device].OffsetDbm - Problem.Model.PathLossDb(link, shifts, gradient);
        double variance = CovarianceDb2(materials + device, materials + device);
        for (int m = 0; m < materials; m++)
        {
            variance -= 2 * gradient[m] * CovarianceDb2(m, materials + device);
            for (int k = 0; k < materials; k++)
            {
                variance += gradient[m] * gradient[k] * CovarianceDb2(m, k);
            }
        }

        return (level, Math.Sqrt(Math.Max(0, variance)));
    }

    private double SpreadDb(int unknown) => Math.Sqrt(Math.Max(0, CovarianceDb2(unknown, unknown)));
}

/// <summary>A measurement against the fit.</summary>
/// <param name="Measurement">The measurement.</param>
/// <param name="PredictedDbm">The level the fit predicts, dBm.</param>
/// <param name="ProbabilityBad">How likely the measurement is a bad one, 0 to 1.</param>
public sealed record FitResidual(FitMeasurement Measurement, double PredictedDbm, double ProbabilityBad)
{
    /// <summary>Measured minus predicted, dB; where nothing was heard, 0 unless a level above the bound is predicted.</summary>
    public double ResidualDb
    {
        get
        {
            double apart = Measurement.LevelDbm - PredictedDbm;
            return Measurement.IsHeard ? apart : Math.Min(0, apart);
        }
    }

    /// <summary>Whether it is more likely bad than good.</summary>
    public bool LooksBad => ProbabilityBad > 0.5;
}
