using LinkMargin.Engine.Fitting;
using Xunit.Abstractions;

namespace LinkMargin.Engine.Tests.Fitting;

/// <summary>What readings that are wrong, copied or of little use do to a fit.</summary>
public sealed class FitRobustnessTests(ITestOutputHelper output)
{
    private static readonly BadMeasurements Bad = new(0.05, 20);

    [Theory]
    [InlineData(5)]
    [InlineData(7)]
    [InlineData(10)]
    [InlineData(-5)]
    [InlineData(-7)]
    public void A_measurement_that_its_own_spread_cannot_explain_moves_no_prediction_by_a_decibel(double outBySpreads)
    {
        double worst = 0, least = double.MaxValue;
        for (int seed = 0; seed < 40; seed++)
        {
            SyntheticMeasurements made = new(seed, 10, Bad);

            // Readings on one device, each as far off as one standard deviation, to either side.
            FitMeasurement[] measurements =
            [
                .. made.Problem.Measurements.Select((r, i) => r with
                {
                    Device = 0,
                    LevelDbm = made.TrueLevelDbm(r.Link, 0) + (i % 2 == 0 ? SyntheticMeasurements.NoiseDb : -SyntheticMeasurements.NoiseDb) * 0.7,
                }),
            ];
            LossFit without = LossFit.Of(made.Problem.With([.. measurements.Skip(1)]));
            (double level, double spread) = without.Predict(0, 0);
            double outDb = outBySpreads * double.Hypot(spread, SyntheticMeasurements.NoiseDb);
            measurements[0] = measurements[0] with { LevelDbm = level + outDb };
            LossFit with = LossFit.Of(made.Problem.With(measurements));
            least = Math.Min(least, Math.Abs(outDb));
            for (int link = 0; link < 10; link++)
            {
                worst = Math.Max(worst, Math.Abs(with.Predict(link, 0).LevelDbm - without.Predict(link, 0).LevelDbm));
            }

            Assert.True(with.Residuals[0].LooksBad);
            Assert.Equal(FitVerdict.SomeMeasurementsLookWrong, FitGoodness.Of(with).Verdict);
        }

        output.WriteLine(FormattableString.Invariant($"{outBySpreads} spreads out ({least:F0} dB and more): at most {worst:F2} dB"));
        Assert.InRange(worst, 0, 1);
    }

    /// <summary>
    /// By a fixed number of decibels, among readings as noisy as they claim. Some houses remain where a material that hardly
    /// another reading meets may well be so different: there the reading is no outlier, and the fit believes it. The limits
    /// are regression values, a little above what was seen: 8, 2 and 1 houses of 200, and 14 and 1 below.
    /// </summary>
    [Theory]
    [InlineData(25, 20)]
    [InlineData(30, 6)]
    [InlineData(40, 4)]
    [InlineData(-25, 20)]
    [InlineData(-40, 4)]
    public void An_outlier_among_noisy_measurements_moves_predictions_in_few_houses(double outDb, int mostHouses)
    {
        int moved = 0;
        for (int seed = 0; seed < 200; seed++)
        {
            SyntheticMeasurements made = new(seed, 10, Bad);
            FitMeasurement[] measurements =
            [
                .. made.Problem.Measurements.Select(r => r with
                {
                    Device = 0,
                    LevelDbm = r.LevelDbm - made.TrueOffsetsDbm[r.Device] + made.TrueOffsetsDbm[0],
                }),
            ];
            LossFit without = LossFit.Of(made.Problem.With([.. measurements.Skip(1)]));
            measurements[0] = measurements[0] with { LevelDbm = made.TrueLevelDbm(0, 0) + outDb };
            LossFit with = LossFit.Of(made.Problem.With(measurements));
            moved += Enumerable.Range(0, 10)
                .Any(link => Math.Abs(with.Predict(link, 0).LevelDbm - without.Predict(link, 0).LevelDbm) > 1) ? 1 : 0;
        }

        output.WriteLine(FormattableString.Invariant($"{outDb} dB out: {moved} of 200 houses by more than 1 dB"));
        Assert.InRange(moved, 0, mostHouses);
    }

    [Fact]
    public void Materials_always_crossed_together_are_named_as_not_reported_apart()
    {
        double[][] crossings = [[0, 0, 0], [1, 1, 0], [1, 1, 0], [2, 2, 0], [0, 0, 0], [2, 2, 0]];
        CountedCrossings model = new([6, 6, 5], crossings);
        LossFit fit = LossFit.Of(new FitProblem(
            model,
            [new("board", 6, 4), new("lath", 6, 4), new("pane", 5, 2)],
            [new DevicePrior("phone", 0, 12)],
            [.. Enumerable.Range(0, 6).Select(i => new FitMeasurement(i, 0, -14 * crossings[i][0], true, 1))],
            Bad));
        IndistinctPair pair = Assert.Single(IndistinctPair.Of(fit));
        Assert.Equal(("board", "lath"), (pair.First, pair.Second));
        Assert.InRange(pair.Correlation, -1, -0.9);
        Assert.Equal(1, fit.Materials[2].SpreadLeft, 1e-9);
        Assert.Equal(0, fit.Materials[2].ShiftDb, 1e-9);
    }

    [Fact]
    public void Measurements_that_agree_to_the_last_decimal_look_made_up()
    {
        SyntheticMeasurements made = new(1, 40, Bad);
        FitMeasurement[] measurements = [.. made.Problem.Measurements.Select(r => r with { LevelDbm = made.TrueLevelDbm(r.Link, r.Device) })];
        Assert.Equal(FitVerdict.TooGoodToBeTrue, FitGoodness.Of(LossFit.Of(made.Problem.With(measurements))).Verdict);
    }

    [Fact]
    public void Measurements_of_another_house_look_as_if_the_model_were_wrong()
    {
        SyntheticMeasurements made = new(1, 40, Bad), other = new(2, 40, Bad);
        LossFit fit = LossFit.Of(made.Problem.With(other.Problem.Measurements));
        Assert.Equal(FitVerdict.ModelLooksWrong, FitGoodness.Of(fit).Verdict);
    }

    [Fact]
    public void A_device_of_one_measurement_tells_nothing_of_the_house()
    {
        CountedCrossings model = new([6], [[1]]);
        FitProblem problem = new(model, [new("wall", 6, 2)], [new("phone", 0, 1000)], [new FitMeasurement(0, 0, -40, true, 4)], Bad);
        LossFit fit = LossFit.Of(problem);
        Assert.Equal(1, fit.Materials[0].SpreadLeft, 1e-3);
        Assert.Null(Assert.Single(LeaveOneOut.ResidualsDb(fit)));
    }

    [Fact]
    public void No_measurements_leave_everything_as_the_tables_say()
    {
        LossFit fit = LossFit.Of(new SyntheticMeasurements(1, 3, Bad).Problem.With([]));
        Assert.All(fit.Materials, m => Assert.Equal((0, 1), (m.ShiftDb, Math.Round(m.SpreadLeft, 9))));
        Assert.Equal((0, FitVerdict.Consistent), (FitGoodness.Of(fit).MeasurementCount, FitGoodness.Of(fit).Verdict));
    }

    [Fact]
    public void The_closed_form_of_leaving_out_is_near_the_refits()
    {
        LossFit fit = LossFit.Of(new SyntheticMeasurements(5, 40, BadMeasurements.None).Problem);
        double?[] refits = LeaveOneOut.ResidualsDb(fit, refit: true), closed = LeaveOneOut.ResidualsDb(fit, refit: false);
        Assert.All(refits.Zip(closed), pair => Assert.Equal(pair.First!.Value, pair.Second!.Value, 0.5));
    }

    [Fact]
    public void The_order_of_the_measurements_does_not_matter()
    {
        FitProblem problem = new SyntheticMeasurements(7, 25, Bad).Problem;
        LossFit one = LossFit.Of(problem), other = LossFit.Of(problem.With([.. problem.Measurements.Reverse()]));
        Assert.All(one.Materials.Zip(other.Materials), pair => Assert.Equal(pair.First.ShiftDb, pair.Second.ShiftDb, 1e-6));
    }
}
