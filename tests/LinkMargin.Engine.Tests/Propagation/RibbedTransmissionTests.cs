using System.Numerics;
using CsCheck;
using LinkMargin.Engine.Materials;

namespace LinkMargin.Engine.Tests.Propagation;

public sealed class RibbedTransmissionTests
{
    [Fact, Law]
    public void Lies_between_its_two_parts_and_moves_one_way_with_the_share() =>
        Gen.Select(Gen.Double[0, 60], Gen.Double[0, 60], Gen.Double[0, 0.9], Gen.Double[0, 0.1])
            .ForAll((ribDb, gapDb, share, more) =>
        {
            double lossDb = RibbedTransmission.LossDb(share, ribDb, gapDb);
            Assert.InRange(lossDb, Math.Min(ribDb, gapDb) - 1e-9, Math.Max(ribDb, gapDb) + 1e-9);
            double step = RibbedTransmission.LossDb(share + more, ribDb, gapDb) - lossDb;
            Assert.True(ribDb > gapDb ? step >= -1e-9 : step <= 1e-9);
        });

    [Fact]
    public void No_ribs_is_the_gap_and_nothing_but_ribs_is_the_rib()
    {
        Assert.Equal(3, RibbedTransmission.LossDb(0, 12, 3), 1e-12);
        Assert.Equal(12, RibbedTransmission.LossDb(1, 12, 3), 1e-12);
    }

    [Fact]
    public void An_opaque_rib_over_half_the_zone_leaves_half_the_field() =>
        Assert.Equal(20 * Math.Log10(2), RibbedTransmission.LossDb(0.5, 400, 0), 1e-6);

    [Fact]
    public void Fields_and_not_powers_add()
    {
        Assert.Equal(Complex.Zero, RibbedTransmission.Amplitude(0.5, -1, 1));
        Assert.Equal(new Complex(0.75, 0.25), RibbedTransmission.Amplitude(0.25, Complex.ImaginaryOne, 1));
    }

    [Theory]
    [InlineData(-0.001, 1, 1)]
    [InlineData(1.001, 1, 1)]
    [InlineData(0.5, -0.001, 1)]
    [InlineData(0.5, 1, -0.001)]
    public void Refuses_shares_and_losses_that_cannot_be(double share, double ribDb, double gapDb) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => RibbedTransmission.LossDb(share, ribDb, gapDb));
}
