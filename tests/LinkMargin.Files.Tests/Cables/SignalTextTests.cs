using LinkMargin.Engine.Cables;
using LinkMargin.Files.Cables;

namespace LinkMargin.Files.Tests.Cables;

public sealed class SignalTextTests
{
    [Theory]
    [InlineData("4k120 4:4:4 12 bit", 3840, 2160, 120, ColourSampling.Full, 12)]
    [InlineData("4K120 4:4:4 12bit", 3840, 2160, 120, ColourSampling.Full, 12)]
    [InlineData("2160p60 4:2:0", 3840, 2160, 60, ColourSampling.Quarter, 10)]
    [InlineData("1080p60 8-bit", 1920, 1080, 60, ColourSampling.Full, 8)]
    [InlineData("8 bit 4:2:2 8k60", 7680, 4320, 60, ColourSampling.Half, 8)]
    public void A_picture_is_read_in_any_order(string text, int width, int height, int rate, ColourSampling sampling, int bits) =>
        Assert.Equal((new PictureSignal(width, height, rate, sampling, bits), null), SignalText.Parse(text));

    [Theory]
    [InlineData("4k121", "has the unknown word '4k121'; did you mean '4k120'?")]
    [InlineData("4k120 4:4:5", "did you mean '4:4:4'?")]
    [InlineData("4k120 sharp picture", "write, for example,")]
    [InlineData("4k120 9 bit", "write 8, 10, 12 or 16 bit")]
    [InlineData("4:4:4", "gives no size and rate")]
    [InlineData("", "gives no size and rate")]
    [InlineData("4k120 4k60", "gives a size and rate twice; keep one, for example 4k120 4:4:4 12 bit")]
    [InlineData("4k999999999999999999999", "has the unknown word '4k999999999999999999999'; ")]
    public void What_is_no_signal_is_refused_with_a_remedy(string text, string part)
    {
        (PictureSignal? signal, string? fault) = SignalText.Parse(text);
        Assert.Null(signal);
        Assert.Contains(part, fault, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_timing_is_written_as_it_is_read() =>
        Assert.All(PictureSignal.KnownTimings, timing =>
        {
            var signal = new PictureSignal(timing.Width, timing.Height, timing.Rate, ColourSampling.Half, 12);
            Assert.Equal((signal, null), SignalText.Parse(SignalText.Of(signal)));
        });
}
