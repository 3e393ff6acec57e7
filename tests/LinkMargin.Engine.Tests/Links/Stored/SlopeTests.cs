using LinkMargin.Engine.Paths;

namespace LinkMargin.Engine.Tests.Links.Stored;

public sealed class SlopeTests
{
    /// <summary>A power that falls by a decibel over one decibel more has a slope of 1.</summary>
    [Fact]
    public void A_slope_is_the_change_of_loss_over_one_decibel_more() =>
        Assert.Equal(1, LossGradients.SlopeOf(1, Math.Pow(10, -LossGradients.StepDb / 10)), 1e-12);

    [Theory]
    [InlineData(1e-300, 0)]
    [InlineData(0, 0)]
    [InlineData(0, 1e-300)]
    public void Where_nothing_is_left_there_is_no_slope(double before, double after) =>
        Assert.Equal(0, LossGradients.SlopeOf(before, after));
}
