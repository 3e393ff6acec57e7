using System.Buffers.Binary;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;

namespace LinkMargin.Plots.Printing;

/// <summary>
/// Reduces the fonts in a PDF to the letters it uses. The drawing library embeds each font whole. The glyphs in use are listed
/// in the document's tables that map glyphs back to text (ISO 32000-1, 9.10.3). Only reads what that library
/// writes: objects one after the other, a table of their positions, and a trailer (ISO 32000-1, 7.5).
/// </summary>
internal static partial class PdfFontSubsets
{
    /// <summary>The same document with smaller fonts; the document itself if nothing can be left out.</summary>
    public static byte[] In(byte[] pdf)
    {
        // One byte is one character, so that positions in the text are positions in the file.
        string text = Encoding.Latin1.GetString(pdf);
        Match[] objects = ObjectHead().Matches(text).ToArray();
        int table = text.LastIndexOf("\nxref\n", StringComparison.Ordinal);
        if (table < 0 || objects.Length == 0)
        {
            return pdf;
        }

        Part[] parts = [.. objects.Where(head => head.Index < table).Select(head => PartAt(pdf, text, head)).OfType<Part>()];
        ushort[] used = [.. parts.Where(part => part.Content is { } content && IsGlyphTable(content)).SelectMany(part => GlyphsIn(part.Content!)).Distinct()];
        if (used.Length == 0 || !parts.Any(part => part.IsFont))
        {
            return pdf;
        }

        using var output = new MemoryStream();
        Dictionary<int, long> places = [];
        int from = 0;
        foreach (Part part in parts)
        {
            output.Write(pdf, from, part.From - from);
            places.Add(part.Number, output.Position);
            if (part.IsFont)
            {
                WriteFont(output, part, FontSubset.Of(part.Content!, used));
            }
            else
            {
                output.Write(pdf, part.From, part.To - part.From);
            }

            from = part.To;
        }

        output.Write(pdf, from, table + 1 - from);
        WriteTable(output, text[(table + 1)..], places);
        return output.ToArray();
    }

    private static void WriteFont(Stream output, Part part, byte[] font)
    {
        using var packed = new MemoryStream();
        using (var deflate = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            deflate.Write(font);
        }

        Write(output, string.Create(
            CultureInfo.InvariantCulture, $"{part.Number} 0 obj\n<</Filter /FlateDecode\n/Length1 {font.Length}\n/Length {packed.Length}>> stream\n"));
        packed.WriteTo(output);
        Write(output, "\nendstream\nendobj\n");
    }

    // The table keeps its format; only positions change.
    private static void WriteTable(Stream output, string old, Dictionary<int, long> places)
    {
        long at = output.Position;
        int count = places.Keys.Max() + 1;
        var table = new StringBuilder("xref\n").Append(CultureInfo.InvariantCulture, $"0 {count}\n0000000000 65535 f \n");
        for (int i = 1; i < count; i++)
        {
            table.Append(places.TryGetValue(i, out long place)
                ? string.Create(CultureInfo.InvariantCulture, $"{place:0000000000} 00000 n \n")
                : "0000000000 00000 f \n");
        }

        string trailer = old[old.IndexOf("trailer", StringComparison.Ordinal)..];
        table.Append(StartOfTable().Replace(trailer, string.Create(CultureInfo.InvariantCulture, $"startxref\n{at}\n")));
        Write(output, table.ToString());
    }

    private static void Write(Stream output, string text) => output.Write(Encoding.Latin1.GetBytes(text));

    private static Part? PartAt(byte[] pdf, string text, Match head)
    {
        int number = int.Parse(head.Groups[1].Value, CultureInfo.InvariantCulture);
        int stream = text.IndexOf(" stream\n", head.Index, StringComparison.Ordinal), end = text.IndexOf("endobj\n", head.Index, StringComparison.Ordinal);
        if (end < 0)
        {
            return null;
        }

        if (stream < 0 || stream > end)
        {
            return new Part(number, head.Index, end + "endobj\n".Length, null, false);
        }

        string dictionary = text[head.Index..stream];
        if (!Length().Match(dictionary).Groups[1].ValueSpan.IsEmpty && int.TryParse(Length().Match(dictionary).Groups[1].Value, CultureInfo.InvariantCulture, out int length))
        {
            int content = stream + " stream\n".Length;
            end = text.IndexOf("endobj\n", content + length, StringComparison.Ordinal) + "endobj\n".Length;
            byte[] bytes = dictionary.Contains("/FlateDecode", StringComparison.Ordinal) ? Unpacked(pdf.AsSpan(content, length)) : pdf[content..(content + length)];
            return new Part(number, head.Index, end, bytes, dictionary.Contains("/Length1", StringComparison.Ordinal));
        }

        return null;
    }

    private static byte[] Unpacked(ReadOnlySpan<byte> packed)
    {
        using var from = new ZLibStream(new MemoryStream(packed.ToArray()), CompressionMode.Decompress);
        using var to = new MemoryStream();
        from.CopyTo(to);
        return to.ToArray();
    }

    private static bool IsGlyphTable(byte[] content) => content.AsSpan().IndexOf("begincmap"u8) >= 0;

    // <glyph> <text> in a list of characters, <first> <last> <text> in a list of ranges.
    private static IEnumerable<ushort> GlyphsIn(byte[] content)
    {
        string table = Encoding.Latin1.GetString(content);
        foreach (Match list in CharacterList().Matches(table))
        {
            foreach (Match entry in CharacterEntry().Matches(list.Value))
            {
                yield return Hex(entry.Groups[1].Value);
            }
        }

        foreach (Match list in RangeList().Matches(table))
        {
            foreach (Match entry in RangeEntry().Matches(list.Value))
            {
                for (int glyph = Hex(entry.Groups[1].Value); glyph <= Hex(entry.Groups[2].Value); glyph++)
                {
                    yield return (ushort)glyph;
                }
            }
        }

        static ushort Hex(string digits) => BinaryPrimitives.ReadUInt16BigEndian(Convert.FromHexString(digits.PadLeft(4, '0')));
    }

    [GeneratedRegex(@"(?<=\n)(\d+) 0 obj\n")]
    private static partial Regex ObjectHead();

    [GeneratedRegex(@"/Length (\d+)")]
    private static partial Regex Length();

    [GeneratedRegex(@"startxref\n\d+\n")]
    private static partial Regex StartOfTable();

    [GeneratedRegex(@"beginbfchar[\s\S]*?endbfchar")]
    private static partial Regex CharacterList();

    [GeneratedRegex(@"<([0-9A-Fa-f]{4})>\s*<[0-9A-Fa-f]+>")]
    private static partial Regex CharacterEntry();

    [GeneratedRegex(@"beginbfrange[\s\S]*?endbfrange")]
    private static partial Regex RangeList();

    [GeneratedRegex(@"<([0-9A-Fa-f]{4})>\s*<([0-9A-Fa-f]{4})>\s*<[0-9A-Fa-f]+>")]
    private static partial Regex RangeEntry();

    private sealed record Part(int Number, int From, int To, byte[]? Content, bool IsFont);
}
