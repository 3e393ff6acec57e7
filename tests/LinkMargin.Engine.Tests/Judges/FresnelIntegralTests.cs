using System.Numerics;
using CsCheck;

namespace LinkMargin.Engine.Tests.Judges;

public sealed class FresnelIntegralTests
{
    [Fact]
    public void Matches_published_values() =>
        Assert.All(ReferenceTable.Read("fresnel-integrals.csv").Rows, row =>
        {
            (double c, double s) = FresnelIntegral.At(row.Number("v"));
            if (row.Text("source") == "mpmath")
            {
                Assert.Equal(row.Number("c"), c, 1e-12);
                Assert.Equal(row.Number("s"), s, 1e-12);
                return;
            }

            row.AssertPrinted("c", c);
            if (row.Has("s"))
            {
                row.AssertPrinted("s", s);
            }
        });

    [Fact, Law]
    public void Both_are_odd_and_end_at_one_half()
    {
        Assert.Equal((0.5, 0.5), FresnelIntegral.At(double.PositiveInfinity));
        Assert.Equal((-0.5, -0.5), FresnelIntegral.At(double.NegativeInfinity));
        Gen.Double[0, 50].ForAll(v =>
        {
            (double c, double s) = FresnelIntegral.At(v);
            Assert.Equal((-c, -s), FresnelIntegral.At(-v));
        });
    }

    [Fact, Law]
    public void Their_slopes_are_the_cosine_and_the_sine() =>
        Gen.Double[-8, 8].ForAll(v =>
        {
            const double Step = 1e-4;
            (double cBelow, double sBelow) = FresnelIntegral.At(v - Step);
            (double cAbove, double sAbove) = FresnelIntegral.At(v + Step);

            // The third derivative is at most (πv)² + π, so the central difference is off by at most a sixth of it × Step².
            double tolerance = ((Math.PI * v * Math.PI * v) + Math.PI) * Step * Step;
            Assert.Equal(Math.Cos(Math.PI / 2 * v * v), (cAbove - cBelow) / (2 * Step), tolerance);
            Assert.Equal(Math.Sin(Math.PI / 2 * v * v), (sAbove - sBelow) / (2 * Step), tolerance);
        });

    [Fact, Law]
    public void Share_beyond_is_made_of_the_integrals() =>
        Gen.Double[-6, 6].ForAll(v =>
        {
            (double c, double s) = FresnelIntegral.At(v);
            Complex expected = new Complex(0.5, 0.5) * new Complex(0.5 - c, s - 0.5);
            Assert.Equal(0, (FresnelIntegral.ShareBeyond(v) - expected).Magnitude, 1e-12);
        });

    [Fact]
    public void Deep_in_the_shadow_the_share_keeps_its_digits()
    {
        // |F| = 1/(√2·π·v)·(1 − 3/(2·(πv²)²) + …), Abramowitz and Stegun 7.3.27 and 7.3.28 (numbers from memory).
        foreach (double v in (double[])[1e2, 1e4, 1e8])
        {
            double expected = 1 / (Math.Sqrt(2) * Math.PI * v) * (1 - (2.5 / Math.Pow(Math.PI * v * v, 2)));
            Assert.Equal(1, FresnelIntegral.ShareBeyond(v).Magnitude / expected, 1e-8);
        }

        Assert.Equal(Complex.Zero, FresnelIntegral.ShareBeyond(double.PositiveInfinity));
        Assert.Equal(Complex.One, FresnelIntegral.ShareBeyond(double.NegativeInfinity));
    }
}
