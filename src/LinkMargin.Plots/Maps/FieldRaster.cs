using System.Runtime.InteropServices;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Surfaces;
using SkiaSharp;

namespace LinkMargin.Plots.Maps;

/// <summary>A surface's tones, one for each pixel of the frame; clear where the surface does not reach.</summary>
internal static class FieldRaster
{
    public static SKImage Of(FieldSurface surface, MarginColours colours, PlanView view)
    {
        int width = (int)Math.Round(view.Frame.Width), height = (int)Math.Round(view.Frame.Height);
        var pixels = new uint[width * height];
        for (int row = 0; row < height; row++)
        {
            double y = view.MetresY(view.Frame.Top + row + 0.5);
            for (int column = 0; column < width; column++)
            {
                double margin = surface.At(view.MetresX(view.Frame.Left + column + 0.5), y);
                pixels[(row * width) + column] = double.IsNaN(margin) ? 0 : Packed(colours.Of(margin));
            }
        }

        var info = new SKImageInfo(width, height, Page.ColourOrder, SKAlphaType.Premul);
        return SKImage.FromPixelCopy(info, MemoryMarshal.AsBytes<uint>(pixels));
    }

    // Blue in the lowest byte: the page's order of colours on the little-endian machines .NET runs on.
    private static uint Packed(SKColor c) => c.Blue | ((uint)c.Green << 8) | ((uint)c.Red << 16) | 0xFF000000;
}
