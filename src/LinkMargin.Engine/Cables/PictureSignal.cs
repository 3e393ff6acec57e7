namespace LinkMargin.Engine.Cables;

/// <summary>How many colour samples a picture carries.</summary>
public enum ColourSampling
{
    /// <summary>4:4:4, every pixel its own colour.</summary>
    Full,

    /// <summary>4:2:2, two pixels share their colour.</summary>
    Half,

    /// <summary>4:2:0, four pixels share their colour.</summary>
    Quarter,
}

/// <summary>The picture that a display is meant to show.</summary>
/// <param name="WidthPixels">Pixels of a line.</param>
/// <param name="HeightLines">Lines of a picture.</param>
/// <param name="PicturesPerSecond">Pictures a second.</param>
/// <param name="Sampling">How many colour samples it carries.</param>
/// <param name="BitsPerSample">Bits of each sample: 8, 10, 12 or 16.</param>
public sealed record PictureSignal(int WidthPixels, int HeightLines, int PicturesPerSecond, ColourSampling Sampling, int BitsPerSample)
{
    /// <summary>Raw rate of a link of three lanes and a clock, Gbit/s.</summary>
    public const double ClockedLinkGbps = 18;

    // Its payload: 8 bits of 10.
    private const double ClockedPayloadGbps = 14.4;
    private const double ClockedOverhead = 10.0 / 8;
    private const double FixedRateOverhead = 18.0 / 16;

    // Pixels and lines with blanking, by size and pictures a second: CTA-861, as in the Linux kernel's table drm_edid; the rows
    // of 7680 x 4320 from memory.
    private static readonly Dictionary<(int Width, int Height, int Rate), (int Pixels, int Lines)> Timings = new()
    {
        [(1280, 720, 50)] = (1980, 750),
        [(1280, 720, 60)] = (1650, 750),
        [(1920, 1080, 24)] = (2750, 1125),
        [(1920, 1080, 25)] = (2640, 1125),
        [(1920, 1080, 30)] = (2200, 1125),
        [(1920, 1080, 50)] = (2640, 1125),
        [(1920, 1080, 60)] = (2200, 1125),
        [(1920, 1080, 100)] = (2640, 1125),
        [(1920, 1080, 120)] = (2200, 1125),
        [(3840, 2160, 24)] = (5500, 2250),
        [(3840, 2160, 25)] = (5280, 2250),
        [(3840, 2160, 30)] = (4400, 2250),
        [(3840, 2160, 50)] = (5280, 2250),
        [(3840, 2160, 60)] = (4400, 2250),
        [(3840, 2160, 100)] = (5280, 2250),
        [(3840, 2160, 120)] = (4400, 2250),
        [(7680, 4320, 30)] = (9000, 4400),
        [(7680, 4320, 60)] = (9000, 4400),
    };

    /// <summary>The sizes and rates whose timing is known, smallest first.</summary>
    public static IReadOnlyList<(int Width, int Height, int Rate)> KnownTimings { get; } = [.. Timings.Keys];

    /// <summary>The picture a display requires where the file does not say: 4K, 120 pictures a second, full colour, 10 bit.</summary>
    public static PictureSignal Usual { get; } = new(3840, 2160, 120, ColourSampling.Full, 10);

    /// <summary>Whether its timing is known.</summary>
    public bool HasTiming => Timings.ContainsKey((WidthPixels, HeightLines, PicturesPerSecond));

    /// <summary>Pixels a second with blanking, MHz.</summary>
    public double PixelClockMHz
    {
        get
        {
            (int pixels, int lines) = Timings[(WidthPixels, HeightLines, PicturesPerSecond)];
            return pixels * (double)lines * PicturesPerSecond / 1e6;
        }
    }

    /// <summary>Bits of a pixel: three components at 4:4:4, two at 4:2:2, one and a half at 4:2:0.</summary>
    public double BitsPerPixel => BitsPerSample * (Sampling switch { ColourSampling.Full => 3, ColourSampling.Half => 2, _ => 1.5 });

    /// <summary>Bits a second with blanking, Gbit/s.</summary>
    public double PayloadGbps => PixelClockMHz * BitsPerPixel / 1000;

    /// <summary>Whether a link of three lanes and a clock carries it; otherwise it needs a fixed-rate link.</summary>
    public bool IsClocked => PayloadGbps <= ClockedPayloadGbps;

    /// <summary>Bits a second on the line, Gbit/s: 10 for each 8 on a clocked link, 18 for each 16 on a fixed-rate link.</summary>
    public double LineGbps => PayloadGbps * (IsClocked ? ClockedOverhead : FixedRateOverhead);
}
