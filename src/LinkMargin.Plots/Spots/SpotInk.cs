using SkiaSharp;

namespace LinkMargin.Plots.Spots;

/// <summary>
/// How spots are told apart: the first, the one to choose, by the strong colour of the sheet, the others by tones that
/// differ in lightness too, so that they part in black and white and for any eye. Their order in each seat's rows, which is
/// that of the key, says the same.
/// </summary>
internal static class SpotInk
{
    private static readonly SKColor[] Tones =
    [
        new(0x8A, 0x1C, 0x3B), new(0x2F, 0x5D, 0x8C), new(0x7A, 0x8F, 0x3A), new(0xB9, 0x7A, 0x2B), new(0x5B, 0x4A, 0x7E),
        new(0x3E, 0x8E, 0x8A),
    ];

    /// <summary>The colour of a spot by its place in the key.</summary>
    internal static SKColor Of(int spot) => Tones[spot % Tones.Length];
}
