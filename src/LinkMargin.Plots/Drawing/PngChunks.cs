using System.Buffers.Binary;

namespace LinkMargin.Plots.Drawing;

/// <summary>The chunks that a PNG is made of (W3C PNG specification, third edition, section 5.3).</summary>
internal static class PngChunks
{
    // Length and type stand before the data, the checksum of type and data behind.
    private const int BytesOfLength = 4;
    private const int BytesOfType = 4;

    /// <summary>Writes a chunk.</summary>
    internal static void Write(MemoryStream file, ReadOnlySpan<byte> type, ReadOnlySpan<byte> data)
    {
        long start = Begin(file, type);
        file.Write(data);
        End(file, start);
    }

    /// <summary>Begins a chunk; its data are what is written next. Returns where it begins, for <see cref="End"/>.</summary>
    internal static long Begin(MemoryStream file, ReadOnlySpan<byte> type)
    {
        long start = file.Position;
        file.Write(stackalloc byte[BytesOfLength]);
        file.Write(type);
        return start;
    }

    /// <summary>Ends a chunk.</summary>
    internal static void End(MemoryStream file, long start)
    {
        Span<byte> chunk = file.GetBuffer().AsSpan((int)start, (int)(file.Position - start)), sum = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(chunk, chunk.Length - BytesOfLength - BytesOfType);
        BinaryPrimitives.WriteUInt32BigEndian(sum, Crc32.Of(chunk[BytesOfLength..]));
        file.Write(sum);
    }
}

/// <summary>The checksum of PNG chunks (section 5.5 and annex D), four bytes at a time.</summary>
internal static class Crc32
{
    private const uint ReversedPolynomial = 0xEDB88320;

    // Tables[k][n] is the remainder of a byte n with k bytes of zeros after it.
    private static readonly uint[][] Tables = MakeTables();

    public static uint Of(ReadOnlySpan<byte> bytes)
    {
        uint crc = uint.MaxValue;
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

        return crc ^ uint.MaxValue;
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
