using System.Buffers.Binary;
using System.Text;
using System.Text.RegularExpressions;

namespace LinkMargin.Files.Writing;

/// <summary>
/// How the program knows its own output again, so that it may replace it. House files carry no mark on purpose: somebody
/// edits them, and then they are nobody else's to replace.
/// </summary>
public static partial class GeneratorMark
{
    /// <summary>First line of a text in which <c>#</c> begins a comment; more may follow on the line.</summary>
    public const string CommentLine = "# Written by LinkMargin";

    /// <summary>Name of the member near the top of a JSON or GeoJSON document.</summary>
    public const string JsonMember = "generator";

    /// <summary>Value of that member, and text of the PNG entry.</summary>
    public const string Name = "LinkMargin";

    /// <summary>Keyword of the PNG text entry (PNG specification, third edition, 11.3.3).</summary>
    public const string PngKeyword = "Software";

    /// <summary>How much of a file is looked at, bytes.</summary>
    internal const int HeadBytes = 4096;

    private static ReadOnlySpan<byte> PngSignature => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>Whether a file that begins like this was written by this program.</summary>
    public static bool IsOn(ReadOnlySpan<byte> head)
    {
        if (head.StartsWith(PngSignature))
        {
            return HasPngEntry(head[PngSignature.Length..]);
        }

        string text = Encoding.UTF8.GetString(head);
        return text.TrimStart('\uFEFF').StartsWith(CommentLine, StringComparison.Ordinal)
            || text.StartsWith(FieldCsv.HeadingLine, StringComparison.Ordinal)
            || JsonMark().IsMatch(text);
    }

    /// <summary>Goes through the chunks: length, type, data, checksum.</summary>
    private static bool HasPngEntry(ReadOnlySpan<byte> chunks)
    {
        byte[] entry = [.. Encoding.Latin1.GetBytes(PngKeyword), 0, .. Encoding.Latin1.GetBytes(Name)];
        const int Frame = 12;
        while (chunks.Length >= Frame)
        {
            uint length = BinaryPrimitives.ReadUInt32BigEndian(chunks);
            if (length > chunks.Length - Frame)
            {
                return false;
            }

            if (chunks[4..8].SequenceEqual("tEXt"u8) && chunks.Slice(8, (int)length).StartsWith(entry))
            {
                return true;
            }

            chunks = chunks[(Frame + (int)length)..];
        }

        return false;
    }

    [GeneratedRegex("\"(generator\"\\s*:\\s*\"|\\$comment\"\\s*:\\s*\"Written by )LinkMargin\"", RegexOptions.CultureInvariant)]
    private static partial Regex JsonMark();
}
