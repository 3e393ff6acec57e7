namespace LinkMargin.Engine.Fitting;

/// <summary>
/// How far each measurement is from what all the others predict: how well the fit does on measurements it has not seen. Up to a
/// few hundred measurements the fit is repeated without each; beyond that the closed form of the linear case replaces it.
/// </summary>
public static class LeaveOneOut
{
    /// <summary>Beyond this many measurements the closed form is used.</summary>
    public const int MostRefits = 300;

    /// <summary>
    /// Residuals, dB, in the measurements' order: measured minus predicted by the others. Null where that says nothing: where
    /// nothing was heard, and for the only measurement of a pair of devices, whose offset nothing else determines.
    /// </summary>
    public static IReadOnlyList<double?> ResidualsDb(LossFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return ResidualsDb(fit, fit.Problem.Measurements.Count <= MostRefits);
    }

    internal static double?[] ResidualsDb(LossFit fit, bool refit) =>
    [
        .. fit.Problem.Measurements.Select((measurement, i) =>
            !measurement.IsHeard || fit.Devices[measurement.Device].MeasurementCount < 2 ? (double?)null
                : refit ? Refitted(fit, i)
                : ClosedForm(fit, i)),
    ];

    private static double Refitted(LossFit fit, int left)
    {
        FitProblem others = fit.Problem.With([.. fit.Problem.Measurements.Where((_, i) => i != left)]);
        double[] unknowns = FitSearch.From(others, fit.State.Unknowns).State.Unknowns;
        return fit.Problem.Measurements[left].LevelDbm - FitState.At(fit.Problem, unknowns, 1).PredictedDbm[left];
    }

    /// <summary>r/(1 − h), with h the leverage of the measurement: its share in its own prediction.</summary>
    private static double ClosedForm(LossFit fit, int i)
    {
        FitMeasurement measurement = fit.Problem.Measurements[i];
        double spread = fit.Predict(measurement.Link, measurement.Device).SpreadDb;
        double own = Math.Max(0, fit.State.Costs[i].Curvature) * spread * spread;
        return fit.Residuals[i].ResidualDb / Math.Max(1e-9, 1 - own);
    }
}
