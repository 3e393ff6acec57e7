using MathNet.Numerics.LinearAlgebra;

namespace LinkMargin.Engine.Readings;

/// <summary>
/// Losses of materials and offsets of devices, fitted to readings: the maximum of the posterior. Priors are normal about the
/// tables; no loss goes below 0; readings are good or bad (<see cref="BadReadings"/>); what was not heard counts by the
/// chance of a level below the bound. Spreads and correlations are those of a normal law with the posterior's curvature at
/// its maximum (Laplace's method); where a loss is held at 0 they are those it would have without the bound.
/// </summary>
public sealed class LossFit
{
    private readonly Matrix<double> covariance;

    private LossFit(FitProblem problem, FitState state, bool converged)
    {
        (Problem, State, HasConverged) = (problem, state, converged);
        double[] scales = [.. problem.Materials.Select(m => m.SpreadDb), .. problem.Devices.Select(d => d.SpreadDb)];
        covariance = state.Curvature(cost => cost.Curvature).Cholesky()
            .Solve(Matrix<double>.Build.DenseIdentity(scales.Length))
            .MapIndexed((i, j, value) => value * scales[i] * scales[j]);
        double[] shifts = FitState.ShiftsDb(problem, state.Unknowns);
        ShiftsDb = shifts;
        Materials = [.. problem.Materials.Select((m, i) => new FittedMaterial(m.Name, m.LossDb, m.SpreadDb, shifts[i], SpreadDb(i)))];
        Devices =
        [
            .. problem.Devices.Select((d, i) => new FittedDevice(
                d.Name,
                d.OffsetDbm + (d.SpreadDb * state.Unknowns[shifts.Length + i]),
                SpreadDb(shifts.Length + i),
                problem.Readings.Count(r => r.Device == i))),
        ];
        Residuals =
        [
            .. problem.Readings.Select((r, i) => new FitResidual(r, state.PredictedDbm[i], state.Costs[i].ProbabilityBad)),
        ];
    }

    /// <summary>What it rests on.</summary>
    public FitProblem Problem { get; }

    /// <summary>Materials before and after, in the problem's order.</summary>
    public IReadOnlyList<FittedMaterial> Materials { get; }

    /// <summary>Devices, in the problem's order.</summary>
    public IReadOnlyList<FittedDevice> Devices { get; }

    /// <summary>Each reading against the fit, in the problem's order.</summary>
    public IReadOnlyList<FitResidual> Residuals { get; }

    /// <summary>The materials' shifts alone, for a model that takes them, dB.</summary>
    public IReadOnlyList<double> ShiftsDb { get; }

    /// <summary>Whether the search came to rest.</summary>
    public bool HasConverged { get; }

    /// <summary>Where the search came to rest.</summary>
    internal FitState State { get; }

    /// <summary>Fits.</summary>
    public static LossFit Of(FitProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        (FitState state, bool converged) = FitSearch.FromPriors(problem);
        return new LossFit(problem, state, converged);
    }

    /// <summary>Covariance of two unknowns, dB²: materials first, then devices.</summary>
    public double CovarianceDb2(int first, int second) => covariance[first, second];

    /// <summary>Correlation of two unknowns, −1 to 1; 0 with one that is not fitted.</summary>
    public double Correlation(int first, int second)
    {
        double both = Math.Sqrt(covariance[first, first] * covariance[second, second]);
        return both > 0 ? Math.Clamp(covariance[first, second] / both, -1, 1) : 0;
    }

    /// <summary>The level predicted for a link, and how far that may be out by what is not known of materials and devices.</summary>
    /// <param name="link">A link of the model, read or not.</param>
    /// <param name="device">The pair of devices.</param>
    public (double LevelDbm, double SpreadDb) Predict(int link, int device)
    {
        int materials = Problem.Materials.Count;
        double[] shifts = [.. ShiftsDb], gradient = new double[materials];
        double level = Devices[device].OffsetDbm - Problem.Model.PathLossDb(link, shifts, gradient);
        Vector<double> by = Vector<double>.Build.Dense(covariance.RowCount);
        for (int m = 0; m < materials; m++)
        {
            by[m] = -gradient[m];
        }

        by[materials + device] = 1;
        return (level, Math.Sqrt(Math.Max(0, by * covariance * by)));
    }

    private double SpreadDb(int unknown) => Math.Sqrt(Math.Max(0, covariance[unknown, unknown]));
}
