using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>The few colours that are not margins.</summary>
internal static class Palette
{
    /// <summary>Walls, lettering, lines.</summary>
    public static readonly SKColor Ink = new(0x1B, 0x20, 0x29);

    /// <summary>Secondary lettering and thin lines.</summary>
    public static readonly SKColor SoftInk = new(0x55, 0x5C, 0x68);

    /// <summary>Walls behind something that matters more.</summary>
    public static readonly SKColor QuietInk = new(0x86, 0x8C, 0x96);

    /// <summary>Ticks, grids, joists.</summary>
    public static readonly SKColor FaintInk = new(0xA9, 0xAD, 0xB4);

    /// <summary>The sheet.</summary>
    public static readonly SKColor Paper = new(0xFF, 0xFF, 0xFF);

    /// <summary>Ground about the house.</summary>
    public static readonly SKColor Ground = new(0xF3, 0xF2, 0xEE);

    /// <summary>The spot: the one strong colour on the sheet, recognised by its shape as well.</summary>
    public static readonly SKColor Spot = new(0x8A, 0x1C, 0x3B);
}
