using LinkMargin.Engine.Fitting;
using MathNet.Numerics.Distributions;

namespace LinkMargin.Engine.Tests.Fitting;

public sealed class NormalTailTests
{
    [Fact]
    public void Tails_and_densities_are_those_of_the_library()
    {
        for (double x = -37; x <= 8; x += 0.25)
        {
            double tail = Math.Log(Normal.CDF(0, 1, x));
            Assert.Equal(tail, NormalTail.LogTail(x), 1e-12 * (1 + Math.Abs(tail)));
            Assert.Equal(Normal.PDFLn(0, 1, x), NormalTail.LogDensity(x), 1e-12 * (1 + (x * x)));
        }
    }

    [Fact]
    public void The_tail_does_not_jump_where_the_series_takes_over() =>
        Assert.Equal(NormalTail.LogTail(-20), NormalTail.LogTail(-20 + 1e-12), 1e-9);

    [Fact]
    public void The_tail_is_finite_however_far_out() => Assert.InRange(NormalTail.LogTail(-1e6), -5.1e11, -4.9e11);
}
