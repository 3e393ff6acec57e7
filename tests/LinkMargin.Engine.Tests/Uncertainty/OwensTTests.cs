using CsCheck;
using LinkMargin.Engine.Uncertainty;
using MathNet.Numerics.Distributions;

namespace LinkMargin.Engine.Tests.Uncertainty;

/// <summary>Owen's function against its identities: D. B. Owen, Annals of Mathematical Statistics 27(4), 1956, from memory.</summary>
public sealed class OwensTTests
{
    private const double Same = 1e-10;

    [Fact, Law]
    public void At_h_0_it_is_an_angle() =>
        Gen.Double[0, 1].ForAll(a => Assert.Equal(Math.Atan(a) / (2 * Math.PI), OwensT.Of(0, a), Same));

    [Fact, Law]
    public void At_a_1_it_is_half_the_product_of_both_tails() =>
        Gen.Double[-6, 6].ForAll(h =>
        {
            double tail = Normal.CDF(0, 1, h);
            Assert.Equal(tail * (1 - tail) / 2, OwensT.Of(h, 1), Same);
        });

    [Fact, Law]
    public void Uncertainty_is_whole_where_nothing_is_known_and_none_where_all_is()
    {
        Gen.Double[-4, 4].ForAll(h =>
        {
            double p = Normal.CDF(0, 1, h);
            Assert.Equal(p * (1 - p), OwensT.UncertaintyLeft(h, 0), Same);
            Assert.Equal(0, OwensT.UncertaintyLeft(h, 1), Same);
        });
        Gen.Select(Gen.Double[-4, 4], Gen.Double[0, 1], Gen.Double[0, 1]).ForAll((h, a, b) =>
            Assert.True(OwensT.UncertaintyLeft(h, Math.Min(a, b)) >= OwensT.UncertaintyLeft(h, Math.Max(a, b)) - Same));
    }

    [Fact]
    public void Uncertainty_left_is_the_mean_over_what_may_come_out()
    {
        // E[p(1 − p)] with the mean moved by a normal share of the variance, summed over a fine grid of what may come out.
        foreach ((double h, double share) in ((double, double)[])[(0, 0.5), (1.2, 0.3), (-0.7, 0.9)])
        {
            double sum = 0, weights = 0;
            for (int i = -4000; i <= 4000; i++)
            {
                double z = i / 500.0, weight = Normal.PDF(0, 1, z);
                double p = Normal.CDF(0, 1, (h + (Math.Sqrt(share) * z)) / Math.Sqrt(1 - share));
                sum += weight * p * (1 - p);
                weights += weight;
            }

            Assert.Equal(sum / weights, OwensT.UncertaintyLeft(h, share), 1e-6);
        }
    }
}
