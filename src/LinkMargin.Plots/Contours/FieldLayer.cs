using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Contours;

/// <summary>
/// A field's tones, and hatching where it is below the required margin, within the rooms. Tones are computed
/// pixel by pixel from the surface of the contour lines, so that a tone ends exactly on its line.
/// </summary>
internal sealed class FieldLayer(
    PlanView view, FieldGround ground, FieldSurface surface, FieldSurface hatched, MarginColours colours, double requiredDb)
    : PlanLayer(view)
{
    /// <summary>Distance between hatch strokes, points.</summary>
    public const double HatchSpacingPoints = 6.5;

    /// <summary>
    /// Draws hatch strokes, dark with a light edge so that they show on every tone, and thin enough not to hide it. They are drawn one by one: the
    /// drawing library takes three times as long for all of them as one path.
    /// </summary>
    /// <param name="canvas">Where to.</param>
    /// <param name="ends">Both ends of each stroke, pixels.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    public static void DrawHatch(SKCanvas canvas, SKPoint[] ends, double pixelsPerPoint)
    {
        using SKPaint edge = Pen.Line(Palette.Paper.WithAlpha(45), 1.4 * pixelsPerPoint);
        using SKPaint stroke = Pen.Line(Palette.Ink.WithAlpha(175), 0.6 * pixelsPerPoint);
        canvas.DrawPoints(SKPointMode.Lines, ends, edge);
        canvas.DrawPoints(SKPointMode.Lines, ends, stroke);
    }

    protected override void Draw(SKCanvas canvas)
    {
        canvas.Save();
        ground.Clip(canvas, View, bare: true);
        using SKImage tones = FieldRaster.Of(surface, colours, View);
        canvas.DrawImage(tones, (float)View.Frame.Left, (float)View.Frame.Top);

        SKPoint[] ends =
        [
            .. Hatch.Below(hatched, requiredDb, View.Points(HatchSpacingPoints) / View.PixelsPerMetre)
                .SelectMany(line => new[] { View.Pixel(line.From), View.Pixel(line.To) }),
        ];
        DrawHatch(canvas, ends, View.PixelsPerPoint);
        canvas.Restore();
    }
}

/// <summary>A surface's tones, one per pixel of the frame; transparent outside the surface.</summary>
internal static class FieldRaster
{
    // The tone where there is no surface.
    private const int Nothing = -1;
    private const uint Transparent = 0;

    public static SKImage Of(FieldSurface surface, MarginColours colours, PlanView view)
    {
        int width = (int)Math.Round(view.Frame.Width), height = (int)Math.Round(view.Frame.Height);
        var pixels = new PixelMemory(width, height);
        uint[] packed = [.. colours.Tones.Select(Packed)];
        double[] places = [.. Enumerable.Range(0, width).Select(column => surface.ColumnAt(view.MetresX(view.Frame.Left + column + 0.5)))];
        int[] firsts = FirstPixels(places, surface.Columns);
        double[] margins = new double[surface.Columns];
        int[] tones = new int[surface.Columns];
        for (int row = 0; row < height; row++)
        {
            surface.AbreastOf(view.MetresY(view.Frame.Top + row + 0.5), margins);
            for (int node = 0; node < tones.Length; node++)
            {
                tones[node] = double.IsNaN(margins[node]) ? Nothing : colours.ToneOf(margins[node]);
            }

            Span<uint> line = pixels.Row(row);
            line[..firsts[0]].Clear();
            line[firsts[^1]..].Clear();
            for (int west = 0; west + 1 < tones.Length; west++)
            {
                int from = firsts[west], to = firsts[west + 1];
                bool isMissing = tones[west] == Nothing || tones[west + 1] == Nothing;
                if (isMissing || tones[west] == tones[west + 1])
                {
                    // Between two nodes of one tone there is no other.
                    line[from..to].Fill(isMissing ? Transparent : packed[tones[west]]);
                    continue;
                }

                for (int column = from; column < to; column++)
                {
                    line[column] = packed[colours.ToneOf(margins[west] + ((places[column] - west) * (margins[west + 1] - margins[west])))];
                }
            }
        }

        return pixels.ToImage();
    }

    // The first pixel east of each node; after the last node, the first beyond the surface.
    private static int[] FirstPixels(double[] places, int nodes)
    {
        int[] firsts = new int[nodes];
        for (int node = 0, column = 0; node < nodes; node++)
        {
            while (column < places.Length && (node < nodes - 1 ? places[column] < node : places[column] <= node))
            {
                column++;
            }

            firsts[node] = column;
        }

        return firsts;
    }

    // Blue in the lowest byte, as PixelMemory has it.
    private static uint Packed(SKColor c) => c.Blue | ((uint)c.Green << 8) | ((uint)c.Red << 16) | 0xFF000000;
}
