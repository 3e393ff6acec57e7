using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>The few colours that do not stand for margins.</summary>
internal static class Palette
{
    /// <summary>Walls, text, lines.</summary>
    public static readonly SKColor Ink = new(0x1B, 0x20, 0x29);

    /// <summary>Secondary text and thin lines.</summary>
    public static readonly SKColor SoftInk = new(0x55, 0x5C, 0x68);

    /// <summary>Structure behind something more important.</summary>
    public static readonly SKColor QuietInk = new(0x86, 0x8C, 0x96);

    /// <summary>Ticks, grids, joists.</summary>
    public static readonly SKColor FaintInk = new(0xA9, 0xAD, 0xB4);

    /// <summary>The sheet.</summary>
    public static readonly SKColor Paper = new(0xFF, 0xFF, 0xFF);

    /// <summary>Ground around the house.</summary>
    public static readonly SKColor Ground = new(0xF3, 0xF2, 0xEE);

    /// <summary>The spot: the only strong colour on the sheet; the spot is also recognisable by its shape.</summary>
    public static readonly SKColor Spot = new(0x8A, 0x1C, 0x3B);
}
