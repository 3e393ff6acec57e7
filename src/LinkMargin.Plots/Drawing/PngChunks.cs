using System.Buffers.Binary;
using LinkMargin.Shared;

namespace LinkMargin.Plots.Drawing;

/// <summary>
/// Adds our mark and the print size to a finished PNG (W3C PNG specification, third edition, sections 5.3,
/// 11.3.3.1 tEXt and 11.3.4.3 pHYs).
/// </summary>
internal static class PngChunks
{
    private const double MetresPerPoint = 0.0254 / 72;

    // Signature, then IHDR with 13 bytes of data.
    private const int EndOfHeader = 8 + PngMark.ChunkFrameBytes + 13;

    /// <summary>A copy of a PNG with our mark and its print resolution, right after its header.</summary>
    internal static byte[] Mark(ReadOnlySpan<byte> png, double pixelsPerPoint)
    {
        if (png.Length < EndOfHeader || !png.StartsWith(PngMark.Signature))
        {
            throw new ArgumentException("These bytes are not a PNG.", nameof(png));
        }

        byte[] text = Chunk(PngMark.ChunkType, PngMark.Entry());
        byte[] density = Chunk("pHYs"u8, DensityData(pixelsPerPoint));
        return [.. png[..EndOfHeader], .. text, .. density, .. png[EndOfHeader..]];
    }

    internal static byte[] Chunk(ReadOnlySpan<byte> type, ReadOnlySpan<byte> data)
    {
        byte[] chunk = new byte[PngMark.ChunkFrameBytes + data.Length];
        BinaryPrimitives.WriteInt32BigEndian(chunk, data.Length);
        type.CopyTo(chunk.AsSpan(4));
        data.CopyTo(chunk.AsSpan(8));
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(8 + data.Length), Crc32.Of(chunk.AsSpan(4, 4 + data.Length)));
        return chunk;
    }

    private static byte[] DensityData(double pixelsPerPoint)
    {
        byte[] data = new byte[9];
        int perMetre = (int)Math.Round(pixelsPerPoint / MetresPerPoint);
        BinaryPrimitives.WriteInt32BigEndian(data, perMetre);
        BinaryPrimitives.WriteInt32BigEndian(data.AsSpan(4), perMetre);
        data[8] = 1; // unit: the metre
        return data;
    }
}

/// <summary>The checksum of PNG chunks (W3C PNG specification, third edition, section 5.5 and annex D).</summary>
internal static class Crc32
{
    private const uint ReversedPolynomial = 0xEDB88320;

    private static readonly uint[] Table = [.. Enumerable.Range(0, 256).Select(n => Remainder((uint)n))];

    public static uint Of(ReadOnlySpan<byte> bytes)
    {
        uint crc = uint.MaxValue;
        foreach (byte b in bytes)
        {
            crc = Table[(crc ^ b) & 0xFF] ^ (crc >> 8);
        }

        return crc ^ uint.MaxValue;
    }

    private static uint Remainder(uint value)
    {
        for (int bit = 0; bit < 8; bit++)
        {
            value = (value & 1) != 0 ? ReversedPolynomial ^ (value >> 1) : value >> 1;
        }

        return value;
    }
}
