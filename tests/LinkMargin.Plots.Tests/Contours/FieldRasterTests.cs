using LinkMargin.Engine.Fields;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Contours;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Contours;

public class FieldRasterTests
{
    private const double RequiredDb = 48, SpacingMetres = 0.11;

    // A hole in the surface, and ground around it without a value.
    private static readonly FieldSurface Surface = Cones.SurfaceOf(
        new Grid(new(-4, -3), 0.1, 80, 60), p => Math.Abs(p.X - 2) + Math.Abs(p.Y - 1) < 0.7 ? double.NaN : 50 - p.DistanceTo(new(0.3, 0.1)));

    private static readonly PlanView View = new(new(20, 30, 620, 510), new(-5, -4), 60, 2.5);
    private static readonly MarginColours Colours = new(new ColourRange(44, 52), 1);

    [Fact]
    public void Every_pixel_has_the_tone_of_the_surface_at_its_centre()
    {
        SKColor[] pixels = Drawn(new FieldRaster(Surface, Colours, View), null);
        int width = (int)View.Frame.Width;
        SKColor[] expected =
        [
            .. Enumerable.Range(0, pixels.Length)
                .Select(i => Surface.At(View.MetresX(View.Frame.Left + (i % width) + 0.5), View.MetresY(View.Frame.Top + (i / width) + 0.5)))
                .Select(margin => double.IsNaN(margin) ? SKColors.White : Colours.Of(margin)),
        ];
        Assert.Contains(SKColors.White, expected);
        Assert.Equal(expected, pixels);
    }

    // The drawing library is the judge: it draws the strokes as lines. It rounds how much of a pixel they cover, and cuts their ends square: 12 % of what
    // hatching changes by measurement.
    [Fact]
    public void Painted_hatching_looks_like_strokes_that_are_drawn()
    {
        var hatch = new HatchTones(Colours.Tones, View, SpacingMetres);
        SKColor[] painted = Drawn(new FieldRaster(Surface, Colours, View) { Hatch = hatch, Hatched = Surface, RequiredDb = RequiredDb }, null);
        using var strokes = new SKPath();
        foreach (HatchLine line in Hatch.Below(Surface, RequiredDb, SpacingMetres))
        {
            strokes.MoveTo(View.Pixel(line.From) - new SKPoint((float)View.Frame.Left, (float)View.Frame.Top));
            strokes.LineTo(View.Pixel(line.To) - new SKPoint((float)View.Frame.Left, (float)View.Frame.Top));
        }

        SKColor[] drawn = Drawn(new FieldRaster(Surface, Colours, View), strokes), bare = Drawn(new FieldRaster(Surface, Colours, View), null);
        int[] off = [.. painted.Zip(drawn, Apart)], hatching = [.. bare.Zip(drawn, Apart)];
        Assert.True(off.Count(o => o > 24) < 0.01 * off.Length, $"{off.Count(o => o > 24)} of {off.Length} pixels are off");
        Assert.True(off.Average() < 0.2 * hatching.Average(), $"off by {off.Average()}, hatching changes {hatching.Average()}");
    }

    // Strips as they are drawn on a page.
    private static SKColor[] Drawn(FieldRaster raster, SKPath? strokes)
    {
        using var bitmap = new SKBitmap((int)View.Frame.Width, raster.Rows);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        for (int row = 0; row < raster.Rows; row += 100)
        {
            using SKImage strip = raster.Image(row, Math.Min(100, raster.Rows - row));
            canvas.DrawImage(strip, 0, row);
        }

        if (strokes is not null)
        {
            FieldLayer.DrawHatch(canvas, strokes, View.PixelsPerPoint);
        }

        canvas.Flush();
        return bitmap.Pixels;
    }

    private static int Apart(SKColor one, SKColor other) =>
        Math.Max(Math.Abs(one.Red - other.Red), Math.Max(Math.Abs(one.Green - other.Green), Math.Abs(one.Blue - other.Blue)));
}
