using System.Globalization;
using LinkMargin.Engine.Cables;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Cables;

/// <summary>Reads and writes a picture signal as people name it: <c>4k120 4:4:4 12 bit</c>.</summary>
public static class SignalText
{
    private static readonly Dictionary<string, (int Width, int Height)> Sizes = new(StringComparer.OrdinalIgnoreCase)
    {
        ["720p"] = (1280, 720), ["1080p"] = (1920, 1080), ["4k"] = (3840, 2160), ["2160p"] = (3840, 2160), ["8k"] = (7680, 4320), ["4320p"] = (7680, 4320),
    };

    private static readonly Dictionary<string, ColourSampling> Samplings = new()
    {
        ["4:4:4"] = ColourSampling.Full, ["4:2:2"] = ColourSampling.Half, ["4:2:0"] = ColourSampling.Quarter,
    };

    private static readonly int[] Depths = [8, 10, 12, 16];

    /// <summary>An example of the notation.</summary>
    public const string Example = "4k120 4:4:4 12 bit";

    /// <summary>Names of size and rate, smallest first.</summary>
    private static string[] Formats { get; } =
        [.. PictureSignal.KnownTimings.Select(timing => SizeName(timing.Width, timing.Height) + timing.Rate.ToString(CultureInfo.InvariantCulture))];

    /// <summary>Reads a signal; the defaults are 4:4:4 and 10 bit. The fault is worded to follow the quoted text.</summary>
    public static (PictureSignal? Signal, string? Fault) Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string[] words = [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(Parts)];
        PictureSignal signal = PictureSignal.Usual;
        bool hasFormat = false;
        for (int i = 0; i < words.Length; i++)
        {
            string word = words[i];
            if (Samplings.TryGetValue(word, out ColourSampling sampling))
            {
                signal = signal with { Sampling = sampling };
            }
            else if (word == "bit" && i > 0 && int.TryParse(words[i - 1], NumberStyles.None, CultureInfo.InvariantCulture, out int depth))
            {
                if (!Depths.Contains(depth))
                {
                    return (null, $"has '{words[i - 1]} bit', which is not a bit depth of a picture; write 8, 10, 12 or 16 bit");
                }

                signal = signal with { BitsPerSample = depth };
            }
            else if (i + 1 < words.Length && words[i + 1] == "bit")
            {
                continue; // read together with the next word
            }
            else if (!hasFormat && Format(word) is { } format)
            {
                hasFormat = true;
                signal = signal with { WidthPixels = format.Width, HeightLines = format.Height, PicturesPerSecond = format.Rate };
            }
            else if (Format(word) is not null)
            {
                return (null, $"gives a size and rate twice; keep one, for example {Example}");
            }
            else
            {
                string[] known = [.. Formats, .. Samplings.Keys, "bit"];
                string advice = NearestWord.Find(word.ToLowerInvariant(), known) is { } meant ? $"did you mean '{meant}'?" : $"write, for example, {Example}";
                return (null, $"has the unknown word {Quote.Of(word)}; {advice}");
            }
        }

        return hasFormat ? (signal, null) : (null, $"gives no size and rate; write, for example, {Example}");
    }

    /// <summary>Writes a signal.</summary>
    public static string Of(PictureSignal signal)
    {
        ArgumentNullException.ThrowIfNull(signal);
        string sampling = Samplings.First(pair => pair.Value == signal.Sampling).Key;
        return string.Create(CultureInfo.InvariantCulture,
            $"{SizeName(signal.WidthPixels, signal.HeightLines)}{signal.PicturesPerSecond} {sampling} {signal.BitsPerSample} bit");
    }

    // Splits "12bit" into "12" and "bit".
    private static string[] Parts(string word) =>
        word.EndsWith("bit", StringComparison.OrdinalIgnoreCase) && word.Length > 3 ? [word[..^3].TrimEnd('-'), "bit"] : [word.Equals("bit", StringComparison.OrdinalIgnoreCase) ? "bit" : word];

    private static (int Width, int Height, int Rate)? Format(string word)
    {
        foreach ((string size, (int width, int height)) in Sizes.OrderByDescending(pair => pair.Key.Length))
        {
            if (word.StartsWith(size, StringComparison.OrdinalIgnoreCase)
                && int.TryParse(word.AsSpan(size.Length), NumberStyles.None, CultureInfo.InvariantCulture, out int rate)
                && PictureSignal.KnownTimings.Contains((width, height, rate)))
            {
                return (width, height, rate);
            }
        }

        return null;
    }

    private static string SizeName(int width, int height) => Sizes.First(pair => pair.Value == (width, height)).Key;
}
