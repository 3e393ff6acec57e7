using System.Buffers.Binary;
using System.Text;

namespace LinkMargin.Plots.Png;

/// <summary>
/// Adds to a finished PNG who drew it and how large it prints (W3C PNG specification, third edition, sections 5.3,
/// 11.3.3.1 tEXt and 11.3.4.3 pHYs).
/// </summary>
public static class PngChunks
{
    /// <summary>The keyword and text that mark a picture as ours.</summary>
    public const string SoftwareKeyword = "Software";

    /// <summary>The text under <see cref="SoftwareKeyword"/>.</summary>
    public const string SoftwareText = "LinkMargin";

    private const double MetresPerPoint = 0.0254 / 72;

    private static ReadOnlySpan<byte> Signature => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    // Signature, then IHDR: length 4, type 4, data 13, check sum 4.
    private const int EndOfHeader = 8 + 4 + 4 + 13 + 4;

    /// <summary>Whether these bytes are a PNG that this program drew. Needs only the first kilobyte of the file.</summary>
    public static bool IsOurs(ReadOnlySpan<byte> png)
    {
        if (png.Length < EndOfHeader || !png.StartsWith(Signature))
        {
            return false;
        }

        byte[] wanted = TextData(SoftwareKeyword, SoftwareText);
        int at = Signature.Length;
        while (at + 8 <= png.Length)
        {
            uint length = BinaryPrimitives.ReadUInt32BigEndian(png[at..]);
            ReadOnlySpan<byte> type = png.Slice(at + 4, 4);
            if (length > (uint)(png.Length - at - 8))
            {
                return false;
            }

            if (type.SequenceEqual("tEXt"u8) && png.Slice(at + 8, (int)length).SequenceEqual(wanted))
            {
                return true;
            }

            at += 12 + (int)length;
        }

        return false;
    }

    /// <summary>A copy of a PNG with our mark and its printing density, right after its header.</summary>
    internal static byte[] Mark(ReadOnlySpan<byte> png, double pixelsPerPoint)
    {
        if (png.Length < EndOfHeader || !png.StartsWith(Signature))
        {
            throw new ArgumentException("These bytes are not a PNG.", nameof(png));
        }

        byte[] text = Chunk("tEXt"u8, TextData(SoftwareKeyword, SoftwareText));
        byte[] density = Chunk("pHYs"u8, DensityData(pixelsPerPoint));
        return [.. png[..EndOfHeader], .. text, .. density, .. png[EndOfHeader..]];
    }

    internal static byte[] Chunk(ReadOnlySpan<byte> type, ReadOnlySpan<byte> data)
    {
        byte[] chunk = new byte[12 + data.Length];
        BinaryPrimitives.WriteInt32BigEndian(chunk, data.Length);
        type.CopyTo(chunk.AsSpan(4));
        data.CopyTo(chunk.AsSpan(8));
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(8 + data.Length), Crc32.Of(chunk.AsSpan(4, 4 + data.Length)));
        return chunk;
    }

    private static byte[] TextData(string keyword, string text) =>
        [.. Encoding.Latin1.GetBytes(keyword), 0, .. Encoding.Latin1.GetBytes(text)];

    private static byte[] DensityData(double pixelsPerPoint)
    {
        byte[] data = new byte[9];
        int perMetre = (int)Math.Round(pixelsPerPoint / MetresPerPoint);
        BinaryPrimitives.WriteInt32BigEndian(data, perMetre);
        BinaryPrimitives.WriteInt32BigEndian(data.AsSpan(4), perMetre);
        data[8] = 1; // per metre
        return data;
    }
}
