using CsCheck;
using LinkMargin.Engine.Fitting;
using MathNet.Numerics.Distributions;

namespace LinkMargin.Engine.Tests.Fitting;

public sealed class MeasurementCostTests
{
    private static readonly Gen<(FitMeasurement Measurement, double Predicted, BadMeasurements Bad)> Case = Gen.Select(
        Gen.Double[-110, -20], Gen.Bool, Gen.Double[1, 8], Gen.Double[-110, -20], Gen.Double[0.001, 0.3], Gen.Double[5, 40],
        (level, heard, noise, predicted, share, spread) =>
            (new FitMeasurement(0, 0, level, heard, noise), predicted, new BadMeasurements(share, spread)));

    [Fact, Law]
    public void Slope_and_curvature_are_those_of_the_value() => Case.ForAll(c =>
    {
        const double step = 1e-4;
        MeasurementCost At(double predicted) => MeasurementCost.Of(c.Measurement, predicted, c.Measurement.NoiseDb, c.Bad);
        MeasurementCost here = At(c.Predicted), up = At(c.Predicted + step), down = At(c.Predicted - step);
        return Math.Abs(here.Slope - ((up.Value - down.Value) / (2 * step))) < 1e-6
            && Math.Abs(here.Curvature - ((up.Slope - down.Slope) / (2 * step))) < 1e-5;
    });

    [Fact, Law]
    public void The_likelihood_is_that_of_a_good_or_a_bad_measurement() => Case.ForAll(c =>
    {
        double noise = c.Measurement.NoiseDb, share = c.Bad.Share, wide = ContinuousUniform.PDF(0, c.Bad.SpreadDb * Math.Sqrt(12), 1);
        double likelihood = c.Measurement.IsHeard
            ? ((1 - share) * Normal.PDF(c.Predicted, noise, c.Measurement.LevelDbm)) + (share * wide)
            : ((1 - share) * Normal.CDF(c.Predicted, noise, c.Measurement.LevelDbm)) + (share / 2);
        double cost = MeasurementCost.Of(c.Measurement, c.Predicted, noise, c.Bad).Value;
        return Math.Abs(cost + Math.Log(likelihood)) < 1e-9 * (1 + cost);
    });

    [Fact]
    public void A_measurement_far_off_is_let_go_of()
    {
        FitMeasurement measurement = new(0, 0, -50, true, 5);
        BadMeasurements bad = new(0.05, 20);
        MeasurementCost near = MeasurementCost.Of(measurement, -55, 5, bad), far = MeasurementCost.Of(measurement, -90, 5, bad);
        Assert.InRange(near.ProbabilityBad, 0, 0.05);
        Assert.InRange(far.ProbabilityBad, 0.99, 1);
        Assert.True(Math.Abs(far.Slope) < Math.Abs(near.Slope));
    }
}
