using SkiaSharp;

namespace LinkMargin.Plots.Colours;

/// <summary>
/// Margin to colour: dark slate for a low margin, warm paper for a high one. Computed from a few anchors in OKLab,
/// joined by a Catmull–Rom curve that is followed at constant speed, so that equal steps of margin look equally
/// different. Lightness only rises, so a grey printer keeps the order; the hue goes from blue to yellow,
/// the axis that red-green colour blindness does not affect.
/// </summary>
internal static class ColourScale
{
    private const int Steps = 1024;
    private const int CurvePoints = 4000;

    private static readonly Oklab[] Anchors =
    [
        Oklab.FromLch(0.420, 0.050, 262),
        Oklab.FromLch(0.560, 0.062, 246),
        Oklab.FromLch(0.700, 0.048, 215),
        Oklab.FromLch(0.825, 0.045, 130),
        Oklab.FromLch(0.910, 0.062, 95),
        Oklab.FromLch(0.972, 0.022, 88),
    ];

    private static readonly Oklab[] Curve =
        [.. Enumerable.Range(0, CurvePoints + 1).Select(i => OnCurve((double)i / CurvePoints))];
    private static readonly double[] Lengths = LengthsAlong(Curve);
    private static readonly SKColor[] Colours =
        [.. Enumerable.Range(0, Steps + 1).Select(i => ExactAt((double)i / Steps).ToColour())];

    /// <summary>The colour at a share of the scale; below 0 and above 1, the end colours.</summary>
    public static SKColor At(double share) => Colours[(int)Math.Round(Math.Clamp(share, 0, 1) * Steps)];

    /// <summary>The same before rounding to 8-bit colour.</summary>
    internal static Oklab ExactAt(double share)
    {
        double wanted = share * Lengths[^1];
        int i = Array.BinarySearch(Lengths, wanted);
        i = Math.Clamp(i < 0 ? ~i : i, 1, CurvePoints);
        return Curve[i - 1].Towards(Curve[i], (wanted - Lengths[i - 1]) / (Lengths[i] - Lengths[i - 1]));
    }

    private static double[] LengthsAlong(Oklab[] curve)
    {
        double[] lengths = new double[curve.Length];
        for (int i = 1; i < curve.Length; i++)
        {
            lengths[i] = lengths[i - 1] + curve[i - 1].DistanceTo(curve[i]);
        }

        return lengths;
    }

    // Beyond an end, the last anchor but one is mirrored at the end.
    private static Oklab OnCurve(double share)
    {
        double place = share * (Anchors.Length - 1);
        int i = Math.Min((int)place, Anchors.Length - 2);
        Oklab from = Anchors[i], to = Anchors[i + 1];
        Oklab before = i > 0 ? Anchors[i - 1] : to.Towards(from, 2);
        Oklab after = i + 2 < Anchors.Length ? Anchors[i + 2] : from.Towards(to, 2);
        double t = place - i;
        return new(
            Blend(before.L, from.L, to.L, after.L, t),
            Blend(before.A, from.A, to.A, after.A, t),
            Blend(before.B, from.B, to.B, after.B, t));
    }

    private static double Blend(double before, double from, double to, double after, double t)
    {
        double slope = to - before;
        double edge = (2 * before) - (5 * from) + (4 * to) - after;
        double twist = (3 * (from - to)) + after - before;
        return from + (t / 2 * (slope + (t * (edge + (t * twist)))));
    }
}
