using ScottPlot;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>
/// The two fonts of every picture. They are embedded in the program, so a picture is the same on a machine with other fonts or
/// none.
/// </summary>
internal static class EmbeddedFonts
{
    /// <summary>The family name requested by the drawing library; no real font has it, so the system cannot substitute one.</summary>
    public const string Family = "LinkMargin Lettering";

    private const string RegularResource = "RobotoCondensed-Regular.ttf", BoldResource = "RobotoCondensed-Bold.ttf";

    private static readonly Lazy<SKTypeface> LazyRegular = new(() => Load(RegularResource));
    private static readonly Lazy<SKTypeface> LazyBold = new(() => Load(BoldResource));

    public static SKTypeface Regular => LazyRegular.Value;

    public static SKTypeface Bold => LazyBold.Value;

    /// <summary>The file of <see cref="Regular"/>.</summary>
    public static byte[] RegularFile => FileOf(RegularResource);

    /// <summary>The file of <see cref="Bold"/>.</summary>
    public static byte[] BoldFile => FileOf(BoldResource);

    private static SKTypeface Load(string resource)
    {
        using SKData data = SKData.CreateCopy(FileOf(resource));
        return SKTypeface.FromData(data)
            ?? throw new InvalidOperationException($"The font '{resource}' in the program cannot be read.");
    }

    private static byte[] FileOf(string resource)
    {
        using Stream stream = typeof(EmbeddedFonts).Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"The font '{resource}' is missing from the program.");
        byte[] file = new byte[stream.Length];
        stream.ReadExactly(file);
        return file;
    }
}

/// <summary>Answers every font request of the drawing library with an embedded font, whatever the name.</summary>
internal sealed class EmbeddedFontResolver : IFontResolver
{
    private static readonly Lock Gate = new();

    /// <summary>Makes this the only resolver. The library's own would use the machine's fonts.</summary>
    public static void Install()
    {
        lock (Gate)
        {
            if (ScottPlot.Fonts.FontResolvers is [EmbeddedFontResolver])
            {
                return;
            }

            ScottPlot.Fonts.FontResolvers.Clear();
            ScottPlot.Fonts.FontResolvers.Add(new EmbeddedFontResolver());
            ScottPlot.Fonts.Default = EmbeddedFonts.Family;
            ScottPlot.Fonts.Sans = EmbeddedFonts.Family;
            ScottPlot.Fonts.Serif = EmbeddedFonts.Family;
            ScottPlot.Fonts.Monospace = EmbeddedFonts.Family;
        }
    }

    public SKTypeface CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
        weight >= FontWeight.SemiBold ? EmbeddedFonts.Bold : EmbeddedFonts.Regular;

    public SKTypeface CreateTypeface(string fontName, bool bold, bool italic) =>
        bold ? EmbeddedFonts.Bold : EmbeddedFonts.Regular;
}
