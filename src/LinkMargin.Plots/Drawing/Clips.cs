using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>Limits what is drawn.</summary>
internal static class Clips
{
    // Beyond every sheet.
    private const float Far = 1e5f;

    /// <summary>
    /// Keeps what is drawn out of a hole. Done by a path with a hole in it, since a canvas that writes SVG knows only what lies
    /// inside all of its limits.
    /// </summary>
    public static void Without(SKCanvas canvas, SKPath hole)
    {
        using var around = new SKPath(hole) { FillType = SKPathFillType.EvenOdd };
        around.AddRect(new SKRect(-Far, -Far, Far, Far));
        canvas.ClipPath(around, antialias: true);
    }
}
