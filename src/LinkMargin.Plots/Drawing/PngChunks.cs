using System.Buffers.Binary;
using LinkMargin.Shared;

namespace LinkMargin.Plots.Drawing;

/// <summary>The chunks that a PNG is made of (W3C PNG specification, third edition, section 5.3).</summary>
internal static class PngChunks
{
    /// <summary>Writes a chunk.</summary>
    internal static void Write(Stream file, ReadOnlySpan<byte> type, ReadOnlySpan<byte> data)
    {
        Span<byte> frame = stackalloc byte[PngMark.ChunkFrameBytes];
        BinaryPrimitives.WriteInt32BigEndian(frame, data.Length);
        type.CopyTo(frame[4..]);
        BinaryPrimitives.WriteUInt32BigEndian(frame[8..], Crc32.Of(type, data));
        file.Write(frame[..8]);
        file.Write(data);
        file.Write(frame[8..]);
    }
}

/// <summary>The checksum of PNG chunks (section 5.5 and annex D), four bytes at a time.</summary>
internal static class Crc32
{
    private const uint ReversedPolynomial = 0xEDB88320;

    // Tables[k][n] is the remainder of a byte n with k bytes of zeros after it.
    private static readonly uint[][] Tables = MakeTables();

    /// <summary>The checksum of some bytes and those after them.</summary>
    public static uint Of(ReadOnlySpan<byte> bytes, ReadOnlySpan<byte> after = default) =>
        Continue(Continue(uint.MaxValue, bytes), after) ^ uint.MaxValue;

    private static uint Continue(uint crc, ReadOnlySpan<byte> bytes)
    {
        uint[] last = Tables[0], third = Tables[1], second = Tables[2], first = Tables[3];
        for (; bytes.Length >= 4; bytes = bytes[4..])
        {
            crc ^= BinaryPrimitives.ReadUInt32LittleEndian(bytes);
            crc = first[crc & 0xFF] ^ second[(crc >> 8) & 0xFF] ^ third[(crc >> 16) & 0xFF] ^ last[crc >> 24];
        }

        foreach (byte b in bytes)
        {
            crc = last[(crc ^ b) & 0xFF] ^ (crc >> 8);
        }

        return crc;
    }

    private static uint[][] MakeTables()
    {
        uint[][] tables = [[.. Enumerable.Range(0, 256).Select(n => Remainder((uint)n))], new uint[256], new uint[256], new uint[256]];
        for (int zeros = 1; zeros < tables.Length; zeros++)
        {
            for (int n = 0; n < 256; n++)
            {
                uint before = tables[zeros - 1][n];
                tables[zeros][n] = tables[0][before & 0xFF] ^ (before >> 8);
            }
        }

        return tables;
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
