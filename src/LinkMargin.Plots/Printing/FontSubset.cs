using System.Buffers.Binary;

namespace LinkMargin.Plots.Printing;

/// <summary>
/// A TrueType font with the outlines of some characters only, so that a document does not embed a whole font for a few words. Glyphs
/// keep their numbers; omitted ones have no outline. Tables for shaping only (kerning, ligatures) and for hinting are left out.
/// Format: ISO/IEC 14496-22 (Open Font Format), tables glyf, loca, cmap, head.
/// </summary>
internal static class FontSubset
{
    private const int DirectoryEntryBytes = 16, HeaderBytes = 12;
    private const uint ChecksumOfFont = 0xB1B0AFBA;
    private const int CompositeArgsAreWords = 1, CompositeScale = 8, CompositeMore = 32, CompositeXyScale = 64, CompositeTwoByTwo = 128;

    private static readonly string[] Kept = ["OS/2", "cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post"];

    /// <summary>Makes a subset.</summary>
    /// <param name="font">The whole font.</param>
    /// <param name="glyphs">Numbers of the glyphs to keep; glyph 0 is always kept.</param>
    /// <returns>A font of the same family; the font itself if no outlines can be left out.</returns>
    public static byte[] Of(byte[] font, IEnumerable<ushort> glyphs)
    {
        Dictionary<string, ArraySegment<byte>> tables = Tables(font);
        if (!tables.TryGetValue("glyf", out ArraySegment<byte> glyf) || !tables.TryGetValue("loca", out ArraySegment<byte> loca))
        {
            return font;
        }

        bool isLong = BinaryPrimitives.ReadInt16BigEndian(tables["head"].AsSpan(50)) != 0;
        int count = BinaryPrimitives.ReadUInt16BigEndian(tables["maxp"].AsSpan(4));
        HashSet<int> kept = [0];
        foreach (ushort glyph in glyphs)
        {
            Keep(glyph);
        }

        using var outlines = new MemoryStream();
        byte[] places = new byte[4 * (count + 1)];
        for (int i = 0; i < count; i++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(places.AsSpan(4 * i), (uint)outlines.Length);
            if (kept.Contains(i))
            {
                outlines.Write(Outline(i));
                while (outlines.Length % 4 != 0)
                {
                    outlines.WriteByte(0);
                }
            }
        }

        BinaryPrimitives.WriteUInt32BigEndian(places.AsSpan(4 * count), (uint)outlines.Length);
        byte[] head = [.. tables["head"]];
        BinaryPrimitives.WriteUInt32BigEndian(head.AsSpan(8), 0); // the checksum of the whole font is written last
        BinaryPrimitives.WriteInt16BigEndian(head.AsSpan(50), 1);
        byte[] post = [.. tables["post"][..32]];
        BinaryPrimitives.WriteUInt32BigEndian(post, 0x00030000); // format 3: without glyph names
        return Written(Kept.Where(tables.ContainsKey).ToDictionary(name => name, name => name switch
        {
            "glyf" => outlines.ToArray(),
            "loca" => places,
            "head" => head,
            "post" => post,
            _ => [.. tables[name]],
        }));

        void Keep(int glyph)
        {
            if (glyph >= count || !kept.Add(glyph))
            {
                return;
            }

            foreach (int part in PartsOf(Outline(glyph)))
            {
                Keep(part);
            }
        }

        ReadOnlySpan<byte> Outline(int glyph)
        {
            long Place(int i) => isLong
                ? BinaryPrimitives.ReadUInt32BigEndian(loca.AsSpan(4 * i))
                : 2L * BinaryPrimitives.ReadUInt16BigEndian(loca.AsSpan(2 * i));
            return glyf.AsSpan((int)Place(glyph), (int)(Place(glyph + 1) - Place(glyph)));
        }
    }

    // A letter with an accent is composed of two glyphs.
    private static List<int> PartsOf(ReadOnlySpan<byte> outline)
    {
        List<int> parts = [];
        if (outline.Length < 10 || BinaryPrimitives.ReadInt16BigEndian(outline) >= 0)
        {
            return parts;
        }

        int at = 10, flags;
        do
        {
            flags = BinaryPrimitives.ReadUInt16BigEndian(outline[at..]);
            parts.Add(BinaryPrimitives.ReadUInt16BigEndian(outline[(at + 2)..]));
            at += 4 + ((flags & CompositeArgsAreWords) != 0 ? 4 : 2)
                + ((flags & CompositeScale) != 0 ? 2 : (flags & CompositeXyScale) != 0 ? 4 : (flags & CompositeTwoByTwo) != 0 ? 8 : 0);
        }
        while ((flags & CompositeMore) != 0);
        return parts;
    }

    private static Dictionary<string, ArraySegment<byte>> Tables(byte[] font)
    {
        Dictionary<string, ArraySegment<byte>> tables = [];
        int count = BinaryPrimitives.ReadUInt16BigEndian(font.AsSpan(4));
        for (int i = 0; i < count; i++)
        {
            ReadOnlySpan<byte> entry = font.AsSpan(HeaderBytes + (i * DirectoryEntryBytes), DirectoryEntryBytes);
            tables.Add(
                System.Text.Encoding.ASCII.GetString(entry[..4]),
                new ArraySegment<byte>(font, BinaryPrimitives.ReadInt32BigEndian(entry[8..]), BinaryPrimitives.ReadInt32BigEndian(entry[12..])));
        }

        return tables;
    }

    private static byte[] Written(Dictionary<string, byte[]> tables)
    {
        string[] names = [.. tables.Keys.Order(StringComparer.Ordinal)];
        int offset = HeaderBytes + (names.Length * DirectoryEntryBytes), headAt = 0;
        byte[] font = new byte[offset + names.Sum(name => Padded(tables[name].Length))];
        int power = 1 << (int)Math.Log2(names.Length);
        BinaryPrimitives.WriteUInt32BigEndian(font, 0x00010000);
        BinaryPrimitives.WriteUInt16BigEndian(font.AsSpan(4), (ushort)names.Length);
        BinaryPrimitives.WriteUInt16BigEndian(font.AsSpan(6), (ushort)(16 * power));
        BinaryPrimitives.WriteUInt16BigEndian(font.AsSpan(8), (ushort)Math.Log2(power));
        BinaryPrimitives.WriteUInt16BigEndian(font.AsSpan(10), (ushort)(16 * (names.Length - power)));
        for (int i = 0; i < names.Length; i++)
        {
            byte[] table = tables[names[i]];
            table.CopyTo(font, offset);
            Span<byte> entry = font.AsSpan(HeaderBytes + (i * DirectoryEntryBytes));
            System.Text.Encoding.ASCII.GetBytes(names[i], entry);
            BinaryPrimitives.WriteUInt32BigEndian(entry[4..], Sum(font.AsSpan(offset, Padded(table.Length))));
            BinaryPrimitives.WriteInt32BigEndian(entry[8..], offset);
            BinaryPrimitives.WriteInt32BigEndian(entry[12..], table.Length);
            headAt = names[i] == "head" ? offset : headAt;
            offset += Padded(table.Length);
        }

        BinaryPrimitives.WriteUInt32BigEndian(font.AsSpan(headAt + 8), unchecked(ChecksumOfFont - Sum(font)));
        return font;
    }

    private static int Padded(int length) => (length + 3) / 4 * 4;

    private static uint Sum(ReadOnlySpan<byte> bytes)
    {
        uint sum = 0;
        for (int i = 0; i < bytes.Length; i += 4)
        {
            sum = unchecked(sum + BinaryPrimitives.ReadUInt32BigEndian(bytes[i..]));
        }

        return sum;
    }
}
