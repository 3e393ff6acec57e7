using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Contours;

/// <summary>How hatch strokes look: dark with a light edge, so that they show on every tone, and thin enough not to hide it.</summary>
internal static class HatchInk
{
    public const double EdgePoints = 1.4;
    public const double StrokePoints = 0.6;

    public static SKColor Edge => Palette.Paper.WithAlpha(45);

    public static SKColor Stroke => Palette.Ink.WithAlpha(175);
}

/// <summary>
/// Tones under the strokes of <see cref="Hatch"/>, pixel by pixel. A stroke rises at 45 degrees, so it covers all pixels alike whose column and row
/// from the frame's upper left corner have the same sum: a row of hatched ground is a part of one list of colours.
/// </summary>
internal sealed class HatchTones
{
    private readonly uint[][] byTone;
    private readonly int width;

    /// <summary>Computes the colours.</summary>
    /// <param name="tones">The tones without strokes.</param>
    /// <param name="view">The view.</param>
    /// <param name="spacingMetres">Distance between strokes, metres.</param>
    public HatchTones(IReadOnlyList<SKColor> tones, PlanView view, double spacingMetres)
    {
        width = (int)Math.Round(view.Frame.Width);
        int sums = width + (int)Math.Round(view.Frame.Height);
        double[] edge = Coverage(sums, view, spacingMetres, HatchInk.EdgePoints), stroke = Coverage(sums, view, spacingMetres, HatchInk.StrokePoints);
        byTone = [.. tones.Select(tone => Enumerable.Range(0, sums).Select(sum =>
            PixelMemory.Packed(Over(Over(tone, HatchInk.Edge, edge[sum]), HatchInk.Stroke, stroke[sum]))).ToArray())];
    }

    /// <summary>The colours of a row of pixels if all of it were one tone and hatched.</summary>
    public ReadOnlySpan<uint> Of(int tone, int row) => byTone[tone].AsSpan(row, width);

    // How much of a pixel the strokes cover, by the sum of its column and row.
    private static double[] Coverage(int sums, PlanView view, double spacingMetres, double widthPoints)
    {
        // Along the sum, strokes are farther apart and wider than across.
        double[] covered = new double[sums];
        double apart = view.Metres(spacingMetres) * Math.Sqrt(2), half = view.Points(widthPoints) / Math.Sqrt(2);

        // The stroke y = x, from which all others are a whole number of distances.
        double first = view.Frame.Height - view.Metres(view.Least.X - view.Least.Y);
        first -= Math.Floor((first + half) / apart) * apart;
        for (double middle = first; middle - half < sums + 1; middle += apart)
        {
            for (int sum = Math.Max(0, (int)Math.Floor(middle - half) - 1); sum < Math.Min(sums, middle + half); sum++)
            {
                covered[sum] += ShareBelow(middle + half - sum) - ShareBelow(middle - half - sum);
            }
        }

        return covered;
    }

    // The share of a pixel whose two coordinates, from its upper left corner, have a sum below this.
    private static double ShareBelow(double sum) => sum switch
    {
        <= 0 => 0,
        <= 1 => sum * sum / 2,
        < 2 => 1 - ((2 - sum) * (2 - sum) / 2),
        _ => 1,
    };

    private static SKColor Over(SKColor ground, SKColor ink, double covered)
    {
        double share = covered * ink.Alpha / byte.MaxValue;
        return new SKColor(Mixed(ground.Red, ink.Red), Mixed(ground.Green, ink.Green), Mixed(ground.Blue, ink.Blue));

        byte Mixed(byte below, byte above) => (byte)Math.Round(below + (share * (above - below)));
    }
}
