using CsCheck;
using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Fitting;

public sealed class DistancePowerLawTests
{
    private static readonly Frequency Frequency = Frequency.FromMegahertz(2441);

    [Fact, Law]
    public void Without_a_shift_both_laws_are_free_space() => Gen.Double[0, 50].ForAll(distance =>
    {
        double free = FreeSpaceLoss.Db(distance, Frequency);
        return DistancePowerLaw.FreeSpace([distance], [free]).PathLossDb(0, [], []) == free
            && DistancePowerLaw.FreeExponent([distance], [free]).PathLossDb(0, [0], new double[1]) == free;
    });

    [Theory]
    [InlineData(0.5, 0)]
    [InlineData(1, 0)]
    [InlineData(10, 10)]
    [InlineData(100, 20)]
    public void An_exponent_of_one_more_costs_ten_decibels_a_decade_beyond_a_metre(double distance, double more)
    {
        double[] gradient = new double[1];
        DistancePowerLaw law = DistancePowerLaw.FreeExponent([distance], [FreeSpaceLoss.Db(distance, Frequency)]);
        Assert.Equal(more, law.PathLossDb(0, [1], gradient) - law.PathLossDb(0, [0], gradient), 1e-9);
        Assert.Equal(more, gradient[0], 1e-9);
    }

    [Fact]
    public void An_exponent_is_found_again()
    {
        double[] distances = [1, 2, 4, 8, 16, 3, 6, 12];
        FitMeasurement[] measurements =
            [.. distances.Select((d, i) => new FitMeasurement(i, 0, 5 - FreeSpaceLoss.Db(1, Frequency) - (31 * Math.Log10(d)), true, 0.1))];
        DistancePowerLaw law = DistancePowerLaw.FreeExponent(distances, [.. distances.Select(d => FreeSpaceLoss.Db(d, Frequency))]);
        LossFit fit = LossFit.Of(new FitProblem(law, law.Priors, [new DevicePrior("phone", 10, 12)], measurements, BadMeasurements.None));
        Assert.Equal(3.1, fit.Materials[0].LossDb, 0.01);
        Assert.Equal(5, fit.Devices[0].OffsetDbm, 0.1);
    }
}
