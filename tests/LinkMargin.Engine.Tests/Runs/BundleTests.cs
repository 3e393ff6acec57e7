using CsCheck;
using LinkMargin.Engine.Runs;

namespace LinkMargin.Engine.Tests.Runs;

/// <summary>Bundles of round cables against known packings of circles in a circle.</summary>
public sealed class BundleTests
{
    /// <summary>Best known packings of equal circles (handbook values of circle packing), in diameters.</summary>
    [Theory]
    [InlineData(1, 1, 1e-9)]
    [InlineData(2, 2, 1e-9)]
    [InlineData(3, 2.155, 0.001)]
    [InlineData(4, 2.414, 0.01)]
    [InlineData(5, 2.701, 0.01)]
    [InlineData(6, 3, 0.01)]
    [InlineData(7, 3, 0.01)]
    [InlineData(8, 3.304, 0.015)]
    [InlineData(9, 3.613, 0.015)]
    [InlineData(10, 3.813, 0.015)]
    public void Equal_cables(int count, double diameters, double within) =>
        Assert.Equal(1, Bundle.Diameter([.. Enumerable.Repeat(1.0, count)]) / diameters, within);

    /// <summary>Three unequal ones by Descartes' theorem on four circles, worked by hand.</summary>
    [Theory]
    [InlineData(1, 1, 1, 2.1547)]
    [InlineData(9, 6, 5, 15.03)]
    [InlineData(9, 9, 6, 18)]
    [InlineData(9, 9, 1, 18)]
    public void Three_cables(double a, double b, double c, double expected)
    {
        Assert.Equal(expected, Bundle.Diameter([a, b, c]), 0.005);
        Assert.Equal(Bundle.Diameter([a, b, c]), Bundle.Diameter([c, a, b]), 1e-12);
    }

    [Fact, Law]
    public void A_bundle_is_never_smaller_than_its_area_nor_looser_than_common_practice() =>
        Gen.Double[4, 10].Array[4, 9].ForAll(diameters =>
        {
            double root = Math.Sqrt(diameters.Sum(d => d * d)), bundle = Bundle.Diameter(diameters);
            Assert.InRange(bundle, root, 1.35 * root); // common practice: up to 1.2 where many are of a size
            Assert.True(bundle >= diameters.OrderDescending().Take(2).Sum() - 1e-9);
        }, cases: 20);

    /// <summary>Up to three it is exact; beyond, packings are found to about one part in a hundred.</summary>
    [Fact, Law]
    public void One_more_cable_never_makes_a_bundle_smaller() =>
        Gen.Select(Gen.Double[3, 10].Array[1, 9], Gen.Double[3, 10]).ForAll(
            (diameters, added) =>
            {
                double before = Bundle.Diameter(diameters), after = Bundle.Diameter([.. diameters, added]);
                Assert.True(after >= before * (diameters.Length < 3 ? 1 : 0.99), $"{before} -> {after}");
                if (added <= diameters.Min())
                {
                    Assert.True(after >= before, $"{before} -> {after}");
                }
            },
            cases: 30);

    [Theory]
    [InlineData(15)]
    [InlineData(16)]
    [InlineData(17)]
    public void Neither_does_it_where_packing_ends(int count)
    {
        double[] cables = [.. Enumerable.Range(0, count).Select(i => 4.0 + (i % 5))];
        Assert.True(Bundle.Diameter([.. cables, 3]) >= Bundle.Diameter(cables));
    }

    [Fact]
    public void More_cables_than_are_packed_have_a_bound() =>
        Assert.Equal(1.2 * Math.Sqrt(40 * 36), Bundle.Diameter([.. Enumerable.Repeat(6.0, 40)]), 1e-9);
}
