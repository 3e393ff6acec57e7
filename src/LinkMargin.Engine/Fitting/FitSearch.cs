namespace LinkMargin.Engine.Fitting;

/// <summary>
/// Finds the least cost by damped Gauss–Newton steps (Levenberg and Marquardt) within bounds. Measurements that may be bad give
/// the cost several minima. So the search begins with the noise taken larger, where no measurement looks bad and there is only
/// one minimum, and follows that one as the noise is reduced.
/// </summary>
internal static class FitSearch
{
    private const int MostSteps = 200;
    private const double SmallestStep = 1e-9;
    private const double LeastDamping = 1e-12, MostDamping = 1e12;

    private static readonly double[] NoiseFactors = [8, 4, 2, 1];

    /// <summary>Searches from the prior means.</summary>
    internal static (FitState State, bool Converged) FromPriors(FitProblem problem)
    {
        double[] unknowns = new double[problem.Materials.Count + problem.Devices.Count];
        (FitState State, bool Converged) found = default;
        foreach (double factor in NoiseFactors)
        {
            found = From(problem, unknowns, factor);
            unknowns = found.State.Unknowns;
        }

        return found;
    }

    /// <summary>Searches from a start that is close already.</summary>
    internal static (FitState State, bool Converged) From(FitProblem problem, double[] start, double noiseFactor = 1)
    {
        double[] bounds = Bounds(problem);
        FitState state = FitState.At(problem, start, noiseFactor);
        double damping = 1e-6;
        for (int step = 0; step < MostSteps; step++)
        {
            double[] gradient = state.Gradient();
            bool[] held = [.. gradient.Select((slope, k) => state.Unknowns[k] <= bounds[k] && slope > 0)];
            FitCurvature curvature = state.Curvature(cost => cost.Weight);
            while (true)
            {
                double[] next = Step(state.Unknowns, gradient, held, curvature, damping, bounds);
                double length = next.Zip(state.Unknowns, (a, b) => Math.Abs(a - b)).DefaultIfEmpty().Max();
                if (length < SmallestStep)
                {
                    return (state, damping < MostDamping);
                }

                FitState tried = FitState.At(problem, next, noiseFactor);
                if (tried.Cost <= state.Cost)
                {
                    state = tried;
                    damping = Math.Max(damping / 10, LeastDamping);
                    break;
                }

                damping *= 10;
            }
        }

        return (state, false);
    }

    /// <summary>No loss goes below 0.</summary>
    internal static double[] Bounds(FitProblem problem) =>
    [
        .. problem.Materials.Select(m => m.SpreadDb > 0 ? -m.LossDb / m.SpreadDb : double.NegativeInfinity),
        .. problem.Devices.Select(_ => double.NegativeInfinity),
    ];

    private static double[] Step(
        double[] from, double[] gradient, bool[] held, FitCurvature curvature, double damping, double[] bounds)
    {
        double[] move = curvature.Solve([.. gradient.Select(slope => -slope)], held, damping);
        double[] next = [.. from];
        for (int k = 0; k < next.Length; k++)
        {
            next[k] = held[k] ? next[k] : Math.Max(bounds[k], from[k] + move[k]);
        }

        return next;
    }
}
