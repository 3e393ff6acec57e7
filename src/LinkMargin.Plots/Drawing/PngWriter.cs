using System.Buffers.Binary;
using System.IO.Compression;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using LinkMargin.Shared;

namespace LinkMargin.Plots.Drawing;

/// <summary>
/// Writes a picture without transparency as a PNG (W3C PNG specification, third edition) with our mark and its print size. The drawing library's
/// own encoder takes twice as long and, as it always writes the transparency, a tenth more room.
/// </summary>
internal static class PngWriter
{
    private const double MetresPerPoint = 0.0254 / 72;

    // Flat tones and lines: rows as they are take less room than filtered ones. Level 3 takes a quarter more time and 6 % less room.
    private const byte NoFilter = 0;
    private const int Level = 2;

    private const int BytesAtOnce = 1 << 16;
    private const int UsualPixelsPerByte = 5;

    /// <summary>The file.</summary>
    /// <param name="pixels">Row by row from the top, blue in the lowest byte; the highest is ignored.</param>
    /// <param name="width">Pixels in a row.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point, for the print size.</param>
    internal static byte[] Write(ReadOnlySpan<uint> pixels, int width, double pixelsPerPoint)
    {
        using var file = new MemoryStream(pixels.Length / UsualPixelsPerByte);
        file.Write(PngMark.Signature);
        PngChunks.Write(file, "IHDR"u8, Header(width, pixels.Length / width));
        PngChunks.Write(file, PngMark.ChunkType, PngMark.Entry());
        PngChunks.Write(file, "pHYs"u8, Density(pixelsPerPoint));
        long start = PngChunks.Begin(file, "IDAT"u8);
        Pack(file, pixels, width);
        PngChunks.End(file, start);
        PngChunks.Write(file, "IEND"u8, []);
        return file.ToArray();
    }

    // Section 11.2.1.
    private static byte[] Header(int width, int height)
    {
        byte[] data = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(data, width);
        BinaryPrimitives.WriteInt32BigEndian(data.AsSpan(4), height);
        data[8] = 8; // bits for each of the colours
        data[9] = 2; // red, green, blue
        return data;
    }

    // Section 11.3.4.3.
    private static byte[] Density(double pixelsPerPoint)
    {
        byte[] data = new byte[9];
        int perMetre = (int)Math.Round(pixelsPerPoint / MetresPerPoint);
        BinaryPrimitives.WriteInt32BigEndian(data, perMetre);
        BinaryPrimitives.WriteInt32BigEndian(data.AsSpan(4), perMetre);
        data[8] = 1; // unit: the metre
        return data;
    }

    // Sections 9 and 10: each row begins with the number of its filter.
    private static void Pack(Stream packed, ReadOnlySpan<uint> pixels, int width)
    {
        int rowBytes = 1 + (3 * width), rowsAtOnce = Math.Max(1, BytesAtOnce / rowBytes);
        byte[] rows = new byte[(rowsAtOnce * rowBytes) + Vector128<byte>.Count];
        using var compressed = new ZLibStream(packed, new ZLibCompressionOptions { CompressionLevel = Level }, leaveOpen: true);
        while (pixels.Length > 0)
        {
            int taken = 0;
            for (; taken < rowsAtOnce && pixels.Length > 0; taken++)
            {
                Span<byte> row = rows.AsSpan(taken * rowBytes);
                row[0] = NoFilter;
                Unpack(pixels[..width], row[1..]);
                pixels = pixels[width..];
            }

            compressed.Write(rows.AsSpan(0, taken * rowBytes));
        }
    }

    // Red, green and blue of each pixel. A vector holds four pixels and writes four bytes more than they need.
    private static void Unpack(ReadOnlySpan<uint> pixels, Span<byte> colours)
    {
        Vector128<byte> order = Vector128.Create((byte)2, 1, 0, 6, 5, 4, 10, 9, 8, 14, 13, 12, 255, 255, 255, 255);
        ReadOnlySpan<byte> bytes = MemoryMarshal.AsBytes(pixels);
        int four = 0;
        for (; four + 4 <= pixels.Length; four += 4)
        {
            Vector128.Shuffle(Vector128.Create(bytes[(4 * four)..]), order).CopyTo(colours[(3 * four)..]);
        }

        for (int i = four; i < pixels.Length; i++)
        {
            colours[3 * i] = (byte)(pixels[i] >> 16);
            colours[(3 * i) + 1] = (byte)(pixels[i] >> 8);
            colours[(3 * i) + 2] = (byte)pixels[i];
        }
    }
}
