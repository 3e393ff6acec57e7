using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Printing;

/// <summary>The embedded fonts for an HTML page: TrueType files with the letters of one text.</summary>
public static class WebFonts
{
    /// <summary>The name of the font family in vector pictures.</summary>
    public static string Family => EmbeddedFonts.Regular.FamilyName;

    /// <summary>The fonts with the letters of a text.</summary>
    public static (byte[] Regular, byte[] Bold) For(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return (Of(EmbeddedFonts.Regular, EmbeddedFonts.RegularFile, text), Of(EmbeddedFonts.Bold, EmbeddedFonts.BoldFile, text));
    }

    private static byte[] Of(SKTypeface face, byte[] file, string text)
    {
        string letters = string.Concat(text.EnumerateRunes().Distinct().Select(rune => rune.ToString()));
        return FontSubset.Of(file, face.GetGlyphs(letters));
    }
}
