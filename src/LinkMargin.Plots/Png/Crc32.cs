namespace LinkMargin.Plots.Png;

/// <summary>The check sum of PNG chunks (W3C PNG specification, third edition, section 5.5 and annex D).</summary>
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
