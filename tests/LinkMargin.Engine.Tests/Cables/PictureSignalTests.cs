using LinkMargin.Engine.Cables;

namespace LinkMargin.Engine.Tests.Cables;

/// <summary>
/// Rates of pictures. Timings by CTA-861 as in the Linux kernel's table drm_edid; the rates follow by arithmetic: pixel clock times bits
/// of a pixel, times 18/16, or 10/8 up to 14.4 Gbit/s.
/// </summary>
public sealed class PictureSignalTests
{
    [Theory]
    [InlineData(3840, 2160, 120, ColourSampling.Full, 12, 1188, 42.768, 48.114)]
    [InlineData(3840, 2160, 120, ColourSampling.Full, 10, 1188, 35.64, 40.095)]
    [InlineData(3840, 2160, 120, ColourSampling.Full, 8, 1188, 28.512, 32.076)]
    [InlineData(3840, 2160, 60, ColourSampling.Full, 8, 594, 14.256, 17.82)]
    [InlineData(3840, 2160, 60, ColourSampling.Full, 10, 594, 17.82, 20.0475)]
    [InlineData(3840, 2160, 60, ColourSampling.Quarter, 10, 594, 8.91, 11.1375)]
    [InlineData(3840, 2160, 60, ColourSampling.Half, 12, 594, 14.256, 17.82)]
    [InlineData(1920, 1080, 120, ColourSampling.Full, 8, 297, 7.128, 8.91)]
    public void Rates_follow_from_the_timing(int width, int height, int rate, ColourSampling sampling, int bits, double clockMHz, double payloadGbps, double lineGbps)
    {
        var signal = new PictureSignal(width, height, rate, sampling, bits);
        Assert.Equal(clockMHz, signal.PixelClockMHz, 1e-9);
        Assert.Equal(payloadGbps, signal.PayloadGbps, 1e-9);
        Assert.Equal(lineGbps, signal.LineGbps, 1e-9);
    }

    [Theory]
    [InlineData(120, 12, 48, Carries.Borderline)]
    [InlineData(120, 10, 40, Carries.Borderline)]
    [InlineData(120, 10, 48, Carries.Yes)]
    [InlineData(120, 12, 40, Carries.No)]
    [InlineData(60, 8, 18, Carries.Yes)]
    [InlineData(60, 10, 18, Carries.No)]
    public void A_sum_just_above_a_links_rate_is_borderline(int rate, int bits, double linkGbps, Carries expected) =>
        Assert.Equal(expected, LinkRates.Of(new PictureSignal(3840, 2160, rate, ColourSampling.Full, bits), linkGbps));

    [Theory]
    [InlineData(60, 8, 18.0)]
    [InlineData(60, 10, 24.0)]
    [InlineData(120, 8, 32.0)]
    [InlineData(120, 10, 40.0)]
    [InlineData(120, 12, 48.0)]
    [InlineData(120, 16, null)]
    public void The_needed_link_is_the_smallest_that_may_carry_it(int rate, int bits, double? neededGbps)
    {
        var signal = new PictureSignal(3840, 2160, rate, ColourSampling.Full, bits);
        Assert.Equal(neededGbps, LinkRates.NeededGbps(signal));
    }

    [Fact]
    public void Both_sides_of_the_borderline()
    {
        var signal = new PictureSignal(3840, 2160, 60, ColourSampling.Full, 8);
        double least = signal.LineGbps / (1 + LinkRates.BorderlineShare);
        Assert.Equal(Carries.Borderline, LinkRates.Of(signal, least * 1.0000001));
        Assert.Equal(Carries.No, LinkRates.Of(signal, least * 0.9999999));
        Assert.Equal(Carries.Yes, LinkRates.Of(signal, signal.LineGbps));
    }
}
