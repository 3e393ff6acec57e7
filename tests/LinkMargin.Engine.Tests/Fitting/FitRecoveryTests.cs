using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using MathNet.Numerics.Distributions;
using Xunit.Abstractions;

namespace LinkMargin.Engine.Tests.Fitting;

/// <summary>Known losses from readings with known noise, over many made-up houses.</summary>
public sealed class FitRecoveryTests(ITestOutputHelper output)
{
    private const int Houses = 200;

    /// <summary>Half the width of a 90 % interval, in standard deviations.</summary>
    private static readonly double Ninety = Normal.InvCDF(0, 1, 0.95);

    private static readonly BadMeasurements Bad = new(0.05, 20);

    [Theory]
    [InlineData(8)]
    [InlineData(30)]
    [InlineData(80)]
    public void Ninety_per_cent_intervals_cover_the_truth_nine_times_in_ten(int linkCount)
    {
        int inside = 0, all = 0, levelsInside = 0, levels = 0;
        double left = 0;
        for (int seed = 0; seed < Houses; seed++)
        {
            SyntheticMeasurements made = new(seed, linkCount, Bad);
            LossFit fit = LossFit.Of(made.Problem);
            Assert.True(fit.HasConverged);
            for (int m = 0; m < fit.Materials.Count; m++)
            {
                all++;
                inside += Math.Abs(fit.Materials[m].ShiftDb - made.TrueShiftsDb[m]) <= Ninety * fit.Materials[m].SpreadDb ? 1 : 0;
                left += fit.Materials[m].SpreadLeft;
            }

            for (int i = 0; i < linkCount; i++)
            {
                (double level, double spread) = fit.Predict(i, i % 2);
                levels++;
                levelsInside += Math.Abs(level - made.TrueLevelDbm(i, i % 2)) <= Ninety * spread ? 1 : 0;
            }
        }

        double coverage = (double)inside / all, levelCoverage = (double)levelsInside / levels;
        output.WriteLine(FormattableString.Invariant(
            $"{linkCount} readings: losses {coverage:P1}, levels {levelCoverage:P1}, mean spread left {left / all:P0}"));
        Assert.InRange(coverage, 0.85, 0.95);
        Assert.InRange(levelCoverage, 0.85, 0.95);
    }

    [Fact]
    public void Many_measurements_tell_the_losses_without_bias()
    {
        double[] error = new double[5], square = new double[5];
        for (int seed = 0; seed < Houses; seed++)
        {
            SyntheticMeasurements made = new(seed, 80, Bad);
            LossFit fit = LossFit.Of(made.Problem);
            for (int m = 0; m < error.Length; m++)
            {
                double apart = fit.Materials[m].ShiftDb - made.TrueShiftsDb[m];
                error[m] += apart / Houses;
                square[m] += apart * apart / Houses;
            }
        }

        for (int m = 0; m < error.Length; m++)
        {
            // Three standard errors of the mean over the houses.
            Assert.InRange(error[m], -3 * Math.Sqrt(square[m] / Houses), 3 * Math.Sqrt(square[m] / Houses));
        }
    }

    [Theory]
    [InlineData(-66)]
    [InlineData(-58)]
    public void What_is_not_heard_brings_no_bias(double hearsFromDbm)
    {
        double sum = 0, squares = 0, ignoring = 0;
        int inside = 0, links = 0, silent = 0;
        for (int seed = 0; seed < Houses; seed++)
        {
            SyntheticMeasurements made = new(seed, 30, Bad, hearsFromDbm);
            LossFit fit = LossFit.Of(made.Problem);
            LossFit deaf = LossFit.Of(made.Problem.With([.. made.Problem.Measurements.Where(r => r.IsHeard)]));
            double mean = 0, mean2 = 0;
            foreach (FitMeasurement measurement in made.Problem.Measurements)
            {
                double truth = made.TrueLevelDbm(measurement.Link, measurement.Device);
                (double level, double spread) = fit.Predict(measurement.Link, measurement.Device);
                mean += (level - truth) / 30;
                mean2 += (deaf.Predict(measurement.Link, measurement.Device).LevelDbm - truth) / 30;
                inside += Math.Abs(level - truth) <= Ninety * spread ? 1 : 0;
                links++;
                silent += measurement.IsHeard ? 0 : 1;
            }

            sum += mean / Houses;
            squares += mean * mean / Houses;
            ignoring += mean2 / Houses;
        }

        output.WriteLine(FormattableString.Invariant(
            $"{(double)silent / links:P0} not heard: bias {sum:F3} dB, {ignoring:F3} dB where they are left out; coverage {(double)inside / links:P1}"));
        Assert.InRange((double)silent / links, 0.15, 0.6);
        double error = 3 * Math.Sqrt(squares / Houses);
        Assert.InRange(sum, -error, error);
        Assert.True(Math.Abs(ignoring) > 3 * Math.Abs(sum), "Leaving out what was not heard should bias the fit.");
        Assert.InRange((double)inside / links, 0.85, 0.95);
    }

    [Fact]
    public void Chi_square_tails_are_as_likely_as_they_claim()
    {
        int above = 0, wrong = 0;
        for (int seed = 0; seed < Houses; seed++)
        {
            FitGoodness goodness = FitGoodness.Of(LossFit.Of(new SyntheticMeasurements(seed, 30, new BadMeasurements(0.001, 20)).Problem));
            above += goodness.UpperTail < 0.5 ? 1 : 0;
            wrong += goodness.Verdict is FitVerdict.ModelLooksWrong or FitVerdict.TooGoodToBeTrue ? 1 : 0;
        }

        // Three standard errors of a share over 200 houses; each tail is one in a hundred.
        Assert.InRange(above, 79, 121);
        Assert.InRange(wrong, 0, 10);
    }

    [Fact]
    public void The_house_predicts_better_than_distance_alone()
    {
        SyntheticMeasurements made = new(3, 40, Bad);
        FitStudy study = FitStudy.Of(
            made.Problem,
            made.House.DistancesMetres,
            [.. made.House.DistancesMetres.Select(metres => FreeSpaceLoss.Db(metres, Frequency.FromMegahertz(2441)))]);
        double house = study.RmsLeaveOneOutDb(study.LeaveOneOutDb);
        double free = study.RmsLeaveOneOutDb(study.FreeSpace.LeaveOneOutDb), law = study.RmsLeaveOneOutDb(study.FreeExponent.LeaveOneOutDb);
        output.WriteLine(FormattableString.Invariant($"left out, rms: house {house:F1}, law {law:F1}, free space {free:F1} dB"));
        Assert.True(house < law && house < free);
        Assert.True(study.RmsInSampleDb(study.Fit) < house);
        Assert.InRange(study.UsedMeasurements, 30, 40);
    }
}
