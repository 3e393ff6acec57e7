namespace LinkMargin.Engine.Fitting;

/// <summary>
/// The unknowns at one point, in units of their prior spreads about their prior means, materials first, then devices; and
/// the cost of the measurements and the priors there.
/// </summary>
internal sealed class FitState
{
    private readonly FitProblem problem;

    private FitState(FitProblem problem, double[] unknowns, double[] predicted, MeasurementCost[] costs, double[][] sensitivity, double cost)
    {
        this.problem = problem;
        (Unknowns, PredictedDbm, Costs, Sensitivity, Cost) = (unknowns, predicted, costs, sensitivity, cost);
    }

    /// <summary>The unknowns.</summary>
    internal double[] Unknowns { get; }

    /// <summary>Predicted level of each measurement, dBm.</summary>
    internal double[] PredictedDbm { get; }

    /// <summary>Cost of each measurement.</summary>
    internal MeasurementCost[] Costs { get; }

    /// <summary>Derivatives of each predicted level by the unknowns of the materials, dB.</summary>
    internal double[][] Sensitivity { get; }

    /// <summary>Minus the logarithm of the posterior, up to a constant.</summary>
    internal double Cost { get; }

    /// <summary>Computes everything at one point.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="unknowns">The point.</param>
    /// <param name="noiseFactor">Multiplies the noise of every measurement; 1 for the problem as it stands.</param>
    internal static FitState At(FitProblem problem, double[] unknowns, double noiseFactor)
    {
        int materials = problem.Materials.Count, count = problem.Measurements.Count;
        double[] shifts = ShiftsDb(problem, unknowns), gradient = new double[materials], predicted = new double[count];
        MeasurementCost[] costs = new MeasurementCost[count];
        double[][] sensitivity = new double[count][];
        double cost = 0;
        foreach (double unknown in unknowns)
        {
            cost += unknown * unknown / 2;
        }

        for (int i = 0; i < count; i++)
        {
            FitMeasurement measurement = problem.Measurements[i];
            DevicePrior device = problem.Devices[measurement.Device];
            double loss = problem.Model.PathLossDb(measurement.Link, shifts, gradient);
            predicted[i] = device.OffsetDbm + (device.SpreadDb * unknowns[materials + measurement.Device]) - loss;
            sensitivity[i] = new double[materials];
            for (int m = 0; m < materials; m++)
            {
                sensitivity[i][m] = -gradient[m] * problem.Materials[m].SpreadDb;
            }

            costs[i] = MeasurementCost.Of(measurement, predicted[i], measurement.NoiseDb * noiseFactor, problem.Bad);
            cost += costs[i].Value;
        }

        return new FitState(problem, unknowns, predicted, costs, sensitivity, cost);
    }

    /// <summary>How much more each material loses than its table says, dB.</summary>
    internal static double[] ShiftsDb(FitProblem problem, double[] unknowns)
    {
        double[] shifts = new double[problem.Materials.Count];
        for (int m = 0; m < shifts.Length; m++)
        {
            // Rounding must not bring a loss that is held at 0 below it.
            MaterialPrior material = problem.Materials[m];
            shifts[m] = Math.Max(material.SpreadDb * unknowns[m], -material.LossDb);
        }

        return shifts;
    }

    /// <summary>Gradient of the cost by the unknowns.</summary>
    internal double[] Gradient()
    {
        double[] gradient = [.. Unknowns];
        for (int i = 0; i < Costs.Length; i++)
        {
            double[] slopes = Sensitivity[i];
            for (int k = 0; k < slopes.Length; k++)
            {
                gradient[k] += Costs[i].Slope * slopes[k];
            }

            int device = problem.Measurements[i].Device;
            gradient[slopes.Length + device] += Costs[i].Slope * problem.Devices[device].SpreadDb;
        }

        return gradient;
    }

    /// <summary>
    /// The identity of the priors and what the measurements add to it, which is never negative, so that it can be inverted.
    /// </summary>
    /// <param name="curvatureOf">Which curvature of a measurement counts; below 0 counts as 0: if it may well be bad it adds nothing.</param>
    internal FitCurvature Curvature(Func<MeasurementCost, double> curvatureOf)
    {
        FitCurvature sum = new(problem.Materials.Count, problem.Devices.Count);
        for (int i = 0; i < Costs.Length; i++)
        {
            int device = problem.Measurements[i].Device;
            sum.Add(Math.Max(0, curvatureOf(Costs[i])), Sensitivity[i], device, problem.Devices[device].SpreadDb);
        }

        return sum;
    }
}
