using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Printing;

/// <summary>The embedded faces as a page carries them: TrueType files with the letters of one text.</summary>
public static class WebFonts
{
    /// <summary>The family's name, as vector pictures call it.</summary>
    public static string Family => EmbeddedFonts.Regular.FamilyName;

    /// <summary>The faces with the letters of a text.</summary>
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
