using LinkMargin.Engine.Fitting;

namespace LinkMargin.Engine.Tests.Fitting;

/// <summary>Small cases worked by hand.</summary>
public sealed class FitClosedFormTests
{
    private static readonly ReferenceTable Reference = ReferenceTable.Read("fit-closed-forms.csv");

    [Fact]
    public void An_offset_alone_is_the_mean_weighted_by_what_each_is_worth()
    {
        LossFit fit = LossFit.Of(new FitProblem(
            new CountedCrossings([], [[], [], []]), [], [new DevicePrior("phone", 2, 2)], [Heard(0, 10, 2), Heard(1, 8, 2), Heard(2, 6, 2)], BadMeasurements.None));
        Assert.True(fit.HasConverged);
        Check("offset-only", "offset", fit.Devices[0].OffsetDbm);
        Check("offset-only", "offset_spread", fit.Devices[0].SpreadDb);
    }

    [Fact]
    public void A_wall_and_an_offset_are_parted_by_a_link_without_the_wall()
    {
        LossFit fit = LossFit.Of(OneWall(table: 7, levelA: 3, levelB: 0));
        Check("one-wall", "offset", fit.Devices[0].OffsetDbm);
        Check("one-wall", "offset_spread", fit.Devices[0].SpreadDb);
        Check("one-wall", "shift", fit.Materials[0].ShiftDb);
        Check("one-wall", "shift_spread", fit.Materials[0].SpreadDb);
        Check("one-wall", "correlation", fit.Correlation(0, 1));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Each_measurement_is_held_against_what_the_other_predicts(bool refit)
    {
        double?[] leaveOneOut = LeaveOneOut.ResidualsDb(LossFit.Of(OneWall(table: 7, levelA: 3, levelB: 0)), refit);
        Check("one-wall", "left_out_a", leaveOneOut[0]!.Value);
        Check("one-wall", "left_out_b", leaveOneOut[1]!.Value);
    }

    [Fact]
    public void The_squares_sum_to_chi_square()
    {
        FitGoodness goodness = FitGoodness.Of(LossFit.Of(OneWall(table: 7, levelA: 3, levelB: 0)));
        Check("one-wall", "chi_square", goodness.ChiSquare);
        Check("one-wall", "upper_tail", goodness.UpperTail);
    }

    [Fact]
    public void A_loss_never_goes_below_nothing_and_the_rest_is_found_with_it_there()
    {
        LossFit fit = LossFit.Of(OneWall(table: 0.5, levelA: 3, levelB: 4));
        Check("bound", "shift", fit.Materials[0].ShiftDb);
        Check("bound", "offset", fit.Devices[0].OffsetDbm);
        Assert.Equal(0, fit.Materials[0].LossDb);
    }

    [Fact]
    public void What_is_not_heard_counts_by_the_chance_of_a_level_below()
    {
        LossFit fit = LossFit.Of(new FitProblem(
            new CountedCrossings([], [[]]), [], [new DevicePrior("phone", 0, 1)], [new FitMeasurement(0, 0, 0, false, 1)], BadMeasurements.None));
        Check("not-heard", "offset", fit.Devices[0].OffsetDbm);
        Check("not-heard", "offset_spread", fit.Devices[0].SpreadDb);
    }

    /// <summary>Levels are given as if the table's loss were added back, as in the reference file.</summary>
    private static FitProblem OneWall(double table, double levelA, double levelB) => new(
        new CountedCrossings([table], [[0], [1]]),
        [new MaterialPrior("wall", table, 1)],
        [new DevicePrior("phone", 0, 1)],
        [Heard(0, levelA, 1), Heard(1, levelB - table, 1)],
        BadMeasurements.None);

    private static FitMeasurement Heard(int link, double level, double noise) => new(link, 0, level, true, noise);

    private static void Check(string what, string quantity, double actual) =>
        Reference.Rows.Single(row => row.Text("case") == what && row.Text("quantity") == quantity).AssertPrinted("value", actual);
}
