using System.Globalization;
using System.Text;
using LinkMargin.Engine.Decisions;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>One size and weight of the embedded face.</summary>
internal sealed class Lettering : IDisposable
{
    private readonly SKFont font;

    public Lettering(double sizePixels, bool isBold)
    {
        font = new SKFont(isBold ? EmbeddedFonts.Bold : EmbeddedFonts.Regular, (float)sizePixels)
        {
            Edging = SKFontEdging.Antialias,
            Hinting = SKFontHinting.None,
            Subpixel = true,
        };
        SKFontMetrics metrics = font.Metrics;
        CapHeight = metrics.CapHeight;
        Descent = metrics.Descent;
        LineHeight = 1.25 * sizePixels;
    }

    /// <summary>Height of a capital or a figure, pixels.</summary>
    public double CapHeight { get; }

    /// <summary>How far letters reach below the line, pixels.</summary>
    public double Descent { get; }

    /// <summary>From one line of text to the next, pixels.</summary>
    public double LineHeight { get; }

    public double WidthOf(string text) => font.MeasureText(Legible.In(font.Typeface, text));

    /// <summary>Writes with the line of text's foot at y.</summary>
    public void Write(SKCanvas canvas, string text, double x, double y, SKColor colour, SKTextAlign align = SKTextAlign.Left)
    {
        using SKPaint paint = Pen.Fill(colour);
        canvas.DrawText(Legible.In(font.Typeface, text), (float)x, (float)y, align, font, paint);
    }

    /// <summary>Writes with the capitals centred on y.</summary>
    public void WriteMiddle(
        SKCanvas canvas, string text, double x, double y, SKColor colour, SKTextAlign align = SKTextAlign.Left) =>
        Write(canvas, text, x, y + (CapHeight / 2), colour, align);

    /// <summary>The same with a rim of another colour, to be read on any ground.</summary>
    public void WriteMiddleRimmed(
        SKCanvas canvas, string text, double x, double y, SKColor colour, SKColor rim, double rimPixels, SKTextAlign align)
    {
        using SKPaint line = Pen.Line(rim, 2 * rimPixels);
        canvas.DrawText(Legible.In(font.Typeface, text), (float)x, (float)(y + (CapHeight / 2)), align, font, line);
        WriteMiddle(canvas, text, x, y, colour, align);
    }

    /// <summary>Breaks a text into lines no wider than given; a single word that is wider is cut short.</summary>
    public IReadOnlyList<string> Wrap(string text, double widthPixels)
    {
        var lines = new List<string>();
        string line = "";
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && WidthOf(longer) > widthPixels)
            {
                lines.Add(Fitted(line, widthPixels));
                longer = word;
            }

            line = longer;
        }

        if (line.Length > 0)
        {
            lines.Add(Fitted(line, widthPixels));
        }

        return lines;
    }

    /// <summary>The text, or as much of its beginning as fits with an ellipsis.</summary>
    public string Fitted(string text, double widthPixels)
    {
        if (WidthOf(text) <= widthPixels)
        {
            return text;
        }

        int length = text.Length;
        while (length > 0 && WidthOf(text[..length] + "…") > widthPixels)
        {
            length -= length > 1 && char.IsLowSurrogate(text[length - 1]) ? 2 : 1;
        }

        return text[..length].TrimEnd() + "…";
    }

    public void Dispose() => font.Dispose();
}

/// <summary>
/// Text as an embedded face can show it. A letter that the face lacks is shown by its Unicode number, never as a box: pictures do not
/// depend on the fonts of a machine.
/// </summary>
internal static class Legible
{
    // The faces have all letters up to here that can be seen.
    private const char AllUpTo = '\u017F';

    /// <summary>The text with every letter that a face has, and numbers for the others.</summary>
    public static string In(SKTypeface face, string text)
    {
        if (!text.AsSpan().ContainsAnyExceptInRange(' ', AllUpTo) || face.ContainsGlyphs(text))
        {
            return text;
        }

        var shown = new StringBuilder();
        foreach (Rune rune in text.EnumerateRunes())
        {
            UnicodeCategory category = Rune.GetUnicodeCategory(rune);
            if (face.ContainsGlyph(rune.Value))
            {
                shown.Append(rune);
            }
            else if (category is not (UnicodeCategory.Format or UnicodeCategory.NonSpacingMark or UnicodeCategory.Control))
            {
                shown.Append(CultureInfo.InvariantCulture, $"[U+{rune.Value:X4}]");
            }
        }

        return shown.ToString();
    }
}

/// <summary>Decibels as a picture writes them: with a true minus sign.</summary>
internal static class MarginText
{
    public static string Bare(double marginDb)
    {
        double rounded = Math.Round(marginDb, 1, MidpointRounding.AwayFromZero);
        string text = Math.Abs(rounded).ToString("0.#", CultureInfo.InvariantCulture);
        return rounded < 0 ? "\u2212" + text : text;
    }

    /// <summary>A required margin, as it was written.</summary>
    public static string AsWritten(double requiredDb) => requiredDb.ToString("0.#########", CultureInfo.InvariantCulture);

    /// <summary>A margin by the rule of <see cref="ShownMargin"/>, so that pictures and text show the same figure.</summary>
    public static string WithUnit(double marginDb, double requiredDb) => WithSign(ShownMargin.Text(marginDb, requiredDb)) + " dB";

    /// <summary>A figure that text prints, with the sign that pictures use.</summary>
    public static string WithSign(string figure) => figure.Replace('-', '\u2212');
}
