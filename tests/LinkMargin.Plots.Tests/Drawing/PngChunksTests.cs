using System.Buffers.Binary;
using System.Text;
using LinkMargin.Plots.Drawing;
using LinkMargin.Shared;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Drawing;

public class PngChunksTests
{
    // An IEND chunk is the same in every PNG: length 0, type, check sum AE 42 60 82 (W3C PNG specification, annex B).
    [Fact]
    public void The_check_sum_of_an_empty_end_chunk_is_the_published_one() =>
        Assert.Equal([0, 0, 0, 0, .. "IEND"u8, 0xAE, 0x42, 0x60, 0x82], PngChunks.Chunk("IEND"u8, []));

    // The usual check value of this polynomial (ITU-T V.42 and ISO/IEC/IEEE 8802-3 use the same sum).
    [Fact]
    public void The_check_sum_of_the_digits_is_the_usual_check_value() =>
        Assert.Equal(0xCBF43926u, Crc32.Of("123456789"u8));

    [Fact]
    public void A_marked_picture_still_decodes_to_the_same_pixels()
    {
        byte[] plain = Plain();
        using SKBitmap before = SKBitmap.Decode(plain), after = SKBitmap.Decode(PngChunks.Mark(plain, 2.5));
        Assert.Equal(before.Bytes, after.Bytes);
    }

    [Fact]
    public void Every_chunk_of_a_marked_picture_has_a_true_check_sum()
    {
        byte[] marked = PngChunks.Mark(Plain(), 2.5);
        Assert.Equal(["IHDR", "tEXt", "pHYs"], Chunks(marked).Take(3).Select(c => c.Type));
        Assert.All(Chunks(marked), c => Assert.Equal(c.Stated, c.Computed));
    }

    [Fact]
    public void A_picture_is_known_as_ours_only_when_marked()
    {
        byte[] plain = Plain();
        Assert.False(PngMark.IsOn(plain));
        Assert.True(PngMark.IsOn(PngChunks.Mark(plain, 2.5)));
        Assert.True(PngMark.IsOn(PngChunks.Mark(plain, 2.5).AsSpan(0, 80)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(7)]
    [InlineData(20)]
    [InlineData(40)]
    public void The_beginning_of_a_file_that_stops_early_is_not_ours(int length) =>
        Assert.False(PngMark.IsOn(PngChunks.Mark(Plain(), 2.5).AsSpan(0, length)));

    [Fact]
    public void A_chunk_that_claims_more_than_there_is_is_not_ours()
    {
        byte[] png = Plain();
        BinaryPrimitives.WriteUInt32BigEndian(png.AsSpan(33), uint.MaxValue);
        Assert.False(PngMark.IsOn(png));
    }

    [Fact]
    public void Something_else_is_refused() =>
        Assert.Throws<ArgumentException>(() => PngChunks.Mark(Encoding.ASCII.GetBytes(new string('x', 100)), 2.5));

    private static byte[] Plain()
    {
        using var bitmap = new SKBitmap(5, 4);
        bitmap.Erase(SKColors.SteelBlue);
        return bitmap.Encode(SKEncodedImageFormat.Png, 100).ToArray();
    }

    private static IEnumerable<(string Type, uint Stated, uint Computed)> Chunks(byte[] png)
    {
        for (int at = 8; at < png.Length;)
        {
            int length = BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(at));
            uint stated = BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(at + 8 + length));
            yield return (Encoding.ASCII.GetString(png, at + 4, 4), stated, Crc32.Of(png.AsSpan(at + 4, 4 + length)));
            at += 12 + length;
        }
    }
}
