using System.Buffers.Binary;
using System.Text;

namespace LinkMargin.Shared;

/// <summary>
/// The mark by which the program knows its own pictures. Plots writes it and Files looks for it; neither sees the other, so
/// both compile this file.
/// </summary>
internal static class PngMark
{
    /// <summary>Keyword of the text entry (W3C PNG specification, third edition, 11.3.3.1).</summary>
    public const string Keyword = "Software";

    /// <summary>Text of the entry.</summary>
    public const string Text = "LinkMargin";

    /// <summary>The eight bytes a PNG begins with (section 5.2).</summary>
    public static ReadOnlySpan<byte> Signature => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>Type of the chunk it stands in.</summary>
    public static ReadOnlySpan<byte> ChunkType => "tEXt"u8;

    /// <summary>Bytes of a chunk beside its data: length 4, type 4, check sum 4.</summary>
    public const int ChunkFrameBytes = 12;

    /// <summary>Data of that chunk: keyword, a zero, text; all of it ASCII.</summary>
    public static byte[] Entry() => Encoding.Latin1.GetBytes($"{Keyword}\0{Text}");

    /// <summary>Whether a file that begins like this is a PNG with the mark among its first chunks.</summary>
    public static bool IsOn(ReadOnlySpan<byte> head)
    {
        if (!head.StartsWith(Signature))
        {
            return false;
        }

        byte[] entry = Entry();
        ReadOnlySpan<byte> chunks = head[Signature.Length..];
        while (chunks.Length >= ChunkFrameBytes)
        {
            uint length = BinaryPrimitives.ReadUInt32BigEndian(chunks);
            if (length > chunks.Length - ChunkFrameBytes)
            {
                return false;
            }

            if (chunks[4..8].SequenceEqual(ChunkType) && chunks.Slice(8, (int)length).StartsWith(entry))
            {
                return true;
            }

            chunks = chunks[(ChunkFrameBytes + (int)length)..];
        }

        return false;
    }
}
