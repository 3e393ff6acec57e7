using System.Runtime.InteropServices;
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

    /// <summary>Draws hatch strokes, dark with a light edge so that they show on every tone, and thin enough not to hide it.</summary>
    public static void DrawHatch(SKCanvas canvas, SKPath strokes, double pixelsPerPoint)
    {
        using SKPaint edge = Pen.Line(Palette.Paper.WithAlpha(45), 1.4 * pixelsPerPoint);
        using SKPaint stroke = Pen.Line(Palette.Ink.WithAlpha(175), 0.6 * pixelsPerPoint);
        canvas.DrawPath(strokes, edge);
        canvas.DrawPath(strokes, stroke);
    }

    protected override void Draw(SKCanvas canvas)
    {
        canvas.Save();
        ground.Clip(canvas, View, bare: true);
        using SKImage tones = FieldRaster.Of(surface, colours, View);
        canvas.DrawImage(tones, (float)View.Frame.Left, (float)View.Frame.Top);

        using var strokes = new SKPath();
        foreach (HatchLine line in Hatch.Below(hatched, requiredDb, View.Points(HatchSpacingPoints) / View.PixelsPerMetre))
        {
            strokes.MoveTo(View.Pixel(line.From));
            strokes.LineTo(View.Pixel(line.To));
        }

        DrawHatch(canvas, strokes, View.PixelsPerPoint);
        canvas.Restore();
    }
}

/// <summary>A surface's tones, one per pixel of the frame; transparent outside the surface.</summary>
internal static class FieldRaster
{
    // The tone where there is no surface.
    private const int Nothing = -1;

    public static SKImage Of(FieldSurface surface, MarginColours colours, PlanView view)
    {
        int width = (int)Math.Round(view.Frame.Width), height = (int)Math.Round(view.Frame.Height);
        var pixels = new uint[width * height];
        uint[] packed = [.. colours.Tones.Select(Packed)];
        double[] places = [.. Enumerable.Range(0, width).Select(column => surface.ColumnAt(view.MetresX(view.Frame.Left + column + 0.5)))];
        double[] margins = new double[surface.Columns];
        int[] tones = new int[surface.Columns];
        for (int row = 0; row < height; row++)
        {
            surface.AbreastOf(view.MetresY(view.Frame.Top + row + 0.5), margins);
            for (int node = 0; node < tones.Length; node++)
            {
                tones[node] = double.IsNaN(margins[node]) ? Nothing : colours.ToneOf(margins[node]);
            }

            Span<uint> line = pixels.AsSpan(row * width, width);
            for (int column = 0; column < width; column++)
            {
                double place = places[column];
                if (place >= 0 && place <= surface.Columns - 1)
                {
                    int west = Math.Min((int)place, surface.Columns - 2), tone = tones[west];
                    if (tone == Nothing || tones[west + 1] == Nothing)
                    {
                        continue;
                    }

                    // Between two nodes of one tone there is no other.
                    tone = tone == tones[west + 1] ? tone : colours.ToneOf(margins[west] + ((place - west) * (margins[west + 1] - margins[west])));
                    line[column] = packed[tone];
                }
            }
        }

        var info = new SKImageInfo(width, height, Page.ColourOrder, SKAlphaType.Premul);
        return SKImage.FromPixelCopy(info, MemoryMarshal.AsBytes<uint>(pixels));
    }

    // Blue in the lowest byte: the sheet's colour order on little-endian machines, which .NET runs on.
    private static uint Packed(SKColor c) => c.Blue | ((uint)c.Green << 8) | ((uint)c.Red << 16) | 0xFF000000;
}
