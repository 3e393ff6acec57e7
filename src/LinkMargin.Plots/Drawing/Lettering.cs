using System.Globalization;
using System.Text;
using LinkMargin.Engine.Decisions;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>One size and weight of the embedded fonts.</summary>
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

    /// <summary>Height of a capital letter or a digit, pixels.</summary>
    public double CapHeight { get; }

    /// <summary>How far letters extend below the baseline, pixels.</summary>
    public double Descent { get; }

    /// <summary>Distance between lines of text, pixels.</summary>
    public double LineHeight { get; }

    public double WidthOf(string text) => font.MeasureText(Legible.In(font.Typeface, text));

    /// <summary>Writes with the baseline at y.</summary>
    public void Write(SKCanvas canvas, string text, double x, double y, SKColor colour, SKTextAlign align = SKTextAlign.Left)
    {
        using SKPaint paint = Pen.Fill(colour);
        canvas.DrawText(Legible.In(font.Typeface, text), (float)x, (float)y, align, font, paint);
    }

    /// <summary>Writes with capital letters centred on y.</summary>
    public void WriteMiddle(
        SKCanvas canvas, string text, double x, double y, SKColor colour, SKTextAlign align = SKTextAlign.Left) =>
        Write(canvas, text, x, y + (CapHeight / 2), colour, align);

    /// <summary>The same with a rim of another colour, readable on any background.</summary>
    public void WriteMiddleRimmed(
        SKCanvas canvas, string text, double x, double y, SKColor colour, SKColor rim, double rimPixels, SKTextAlign align)
    {
        using SKPaint line = Pen.Line(rim, 2 * rimPixels);
        canvas.DrawText(Legible.In(font.Typeface, text), (float)x, (float)(y + (CapHeight / 2)), align, font, line);
        WriteMiddle(canvas, text, x, y, colour, align);
    }

    /// <summary>Breaks a text into lines of at most this width; a single wider word is truncated.</summary>
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

    /// <summary>The same in at most so many lines; the last one is truncated.</summary>
    public IReadOnlyList<string> Wrap(string text, double widthPixels, int most)
    {
        IReadOnlyList<string> lines = Wrap(text, widthPixels);
        return lines.Count <= most ? lines : [.. lines.Take(most - 1), Fitted(string.Join(' ', lines.Skip(most - 1)), widthPixels)];
    }

    /// <summary>The text, or as much of its start as fits with an ellipsis.</summary>
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
/// Text that an embedded font can show. A letter that the font lacks is shown by its Unicode code, never as a box: pictures do not
/// depend on the fonts of a machine.
/// </summary>
internal static class Legible
{
    // The fonts have all visible characters up to this one.
    private const char AllUpTo = '\u017F';

    /// <summary>The text with every letter that the font has, and codes for the others.</summary>
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

/// <summary>Decibels as written in a picture: with a true minus sign.</summary>
internal static class MarginText
{
    public static string Bare(double marginDb)
    {
        double rounded = Math.Round(marginDb, 1, MidpointRounding.AwayFromZero);
        string text = Math.Abs(rounded).ToString("0.#", CultureInfo.InvariantCulture);
        return rounded < 0 ? "\u2212" + text : text;
    }

    /// <summary>A required margin as written in the house file.</summary>
    public static string AsWritten(double requiredDb) => requiredDb.ToString("0.#########", CultureInfo.InvariantCulture);

    /// <summary>A margin by the rule of <see cref="ShownMargin"/>, so that pictures and text show the same number.</summary>
    public static string WithUnit(double marginDb, double requiredDb) => WithSign(ShownMargin.Text(marginDb, requiredDb)) + " dB";

    /// <summary>A number as in text output, with the minus sign of pictures.</summary>
    public static string WithSign(string figure) => figure.Replace('-', '\u2212');
}
