using SkiaSharp;

namespace LinkMargin.Plots.Colours;

/// <summary>
/// Margin to colour: dark slate where little is left, warm paper where there is plenty. Made here, from a few anchors
/// in OKLab joined by straight lines and walked at constant speed, so that equal steps of margin are equal steps to
/// the eye. Lightness only rises, so a grey printer keeps the order; the hue goes from blue to yellow, the axis that
/// red-green colour blindness leaves alone.
/// </summary>
internal static class ColourScale
{
    private const int Steps = 1024;

    private static readonly Oklab[] Anchors =
    [
        Oklab.FromLch(0.420, 0.050, 262),
        Oklab.FromLch(0.560, 0.062, 246),
        Oklab.FromLch(0.700, 0.048, 215),
        Oklab.FromLch(0.825, 0.045, 130),
        Oklab.FromLch(0.910, 0.062, 95),
        Oklab.FromLch(0.972, 0.022, 88),
    ];

    private static readonly SKColor[] Colours = [.. Enumerable.Range(0, Steps + 1).Select(i => ExactAt((double)i / Steps).ToColour())];

    /// <summary>The colour a share of the way up the scale; below 0 and above 1 the ends.</summary>
    public static SKColor At(double share) => Colours[(int)Math.Round(Math.Clamp(share, 0, 1) * Steps)];

    /// <summary>The same before it is rounded to a screen's steps.</summary>
    internal static Oklab ExactAt(double share)
    {
        double left = share * Enumerable.Range(1, Anchors.Length - 1).Sum(i => Anchors[i - 1].DistanceTo(Anchors[i]));
        for (int i = 1; i < Anchors.Length; i++)
        {
            double length = Anchors[i - 1].DistanceTo(Anchors[i]);
            if (left <= length || i == Anchors.Length - 1)
            {
                return Anchors[i - 1].Towards(Anchors[i], Math.Min(1, left / length));
            }

            left -= length;
        }

        return Anchors[^1];
    }
}
