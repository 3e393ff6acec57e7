using ScottPlot;
using SkiaSharp;

namespace LinkMargin.Plots.Fonts;

/// <summary>Answers every request of the drawing library with an embedded face, whatever name it asks for.</summary>
internal sealed class EmbeddedFontResolver : IFontResolver
{
    private static readonly Lock Gate = new();

    /// <summary>Makes this the only resolver. The library's own would look among the machine's fonts.</summary>
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
