using CsCheck;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Quantities;

public sealed class BandTests
{
    [Fact]
    public void Bluetooth_is_79_channels_a_megahertz_apart()
    {
        Assert.Equal(79, Band.Bluetooth.Channels.Count);
        Assert.Equal(2402, Band.Bluetooth.Channels[0].Megahertz, 1e-9);
        Assert.Equal(2480, Band.Bluetooth.Channels[^1].Megahertz, 1e-9);
    }

    [Fact]
    public void The_equivalent_frequency_of_Bluetooth_follows_from_its_centre_and_width()
    {
        // 79 channels 1 MHz apart have the variance (79² − 1)/12 = 520 MHz² about 2441 MHz; to second order the mean of
        // 1/f² is (1 + 3·520/2441²)/2441². The next term moves the frequency by less than 0.0001 MHz.
        Assert.Equal(2441 / Math.Sqrt(1 + (3 * 520 / (2441.0 * 2441))), Band.Bluetooth.Equivalent.Megahertz, 1e-4);
    }

    [Fact, Law]
    public void The_loss_at_the_equivalent_frequency_is_the_mean_of_the_power_over_the_channels() =>
        Gen.Select(Gen.Double[2000, 6000].Array[1, 80], Gen.Double[0.5, 50]).ForAll((megahertz, metres) =>
        {
            Band band = new(megahertz.Select(Frequency.FromMegahertz));
            double mean = band.Channels.Average(f => Decibels.ToPowerRatio(-FreeSpaceLoss.Db(metres, f)));
            Assert.Equal(-Decibels.FromPowerRatio(mean), FreeSpaceLoss.Db(metres, band.Equivalent), 1e-9);
        });

    [Fact]
    public void A_band_of_one_channel_is_that_channel() =>
        Assert.Equal(2440, new Band([Frequency.FromMegahertz(2440)]).Equivalent.Megahertz, 1e-9);

    [Fact]
    public void Refuses_to_be_empty() => Assert.Throws<ArgumentOutOfRangeException>(() => new Band([]));
}
