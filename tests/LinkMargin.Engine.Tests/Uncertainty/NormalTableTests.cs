using LinkMargin.Engine.Uncertainty;
using MathNet.Numerics.Distributions;

namespace LinkMargin.Engine.Tests.Uncertainty;

/// <summary>The table of the normal distribution against published values, the library it is made from, and its own ends.</summary>
public sealed class NormalTableTests
{
    /// <summary>NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1: area between 0 and z, to which one half is added here.</summary>
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(0.5, 0.69146)]
    [InlineData(1, 0.84134)]
    [InlineData(1.28, 0.89973)]
    [InlineData(1.96, 0.97500)]
    [InlineData(3, 0.99865)]
    [InlineData(-1, 0.15866)]
    public void Published_values(double z, double below) => Assert.Equal(below, NormalTable.Below(z), 5e-6);

    [Fact]
    public void Everywhere_within_1e_10_of_the_library_and_never_falling()
    {
        const double Step = 0.00037; // meets knots and what lies between them
        double before = 0;
        for (double z = -9; z < 9; z += Step)
        {
            double below = NormalTable.Below(z);
            Assert.Equal(Normal.CDF(0, 1, z), below, 1e-10);
            Assert.InRange(below, before, 1);
            before = below;
        }
    }

    [Theory]
    [InlineData(double.NegativeInfinity, 0)]
    [InlineData(-1e300, 0)]
    [InlineData(-8.5, 0)]
    [InlineData(8.5, 1)]
    [InlineData(1e300, 1)]
    [InlineData(double.PositiveInfinity, 1)]
    public void At_its_ends_and_beyond_nothing_or_all_is_below(double z, double below) => Assert.Equal(below, NormalTable.Below(z));
}
