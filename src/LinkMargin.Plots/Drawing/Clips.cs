using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>Restricts drawing to a region.</summary>
internal static class Clips
{
    // Outside every sheet.
    private const float Far = 1e5f;

    /// <summary>
    /// Keeps drawing out of a hole. Uses a path with a hole in it, because the SVG canvas only supports clips that keep the
    /// inside.
    /// </summary>
    public static void Without(SKCanvas canvas, SKPath hole)
    {
        using var around = new SKPath(hole) { FillType = SKPathFillType.EvenOdd };
        around.AddRect(new SKRect(-Far, -Far, Far, Far));
        canvas.ClipPath(around, antialias: true);
    }
}
