using System.Buffers.Binary;
using System.Text;
using LinkMargin.Plots.Drawing;
using LinkMargin.Shared;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Drawing;

public class PngWriterTests
{
    // An IEND chunk is the same in every PNG: length 0, type, check sum AE 42 60 82 (W3C PNG specification, annex B).
    [Fact]
    public void The_check_sum_of_an_empty_end_chunk_is_the_published_one()
    {
        using var file = new MemoryStream();
        PngChunks.Write(file, "IEND"u8, []);
        Assert.Equal([0, 0, 0, 0, .. "IEND"u8, 0xAE, 0x42, 0x60, 0x82], file.ToArray());
    }

    // The usual check value of this polynomial (ITU-T V.42 and ISO/IEC/IEEE 8802-3 use the same sum).
    [Fact]
    public void The_check_sum_of_the_digits_is_the_usual_check_value() =>
        Assert.Equal(0xCBF43926u, Crc32.Of("123456789"u8));

    // The drawing library's decoder is the judge. Widths around a whole number of vectors, and more rows than are packed at once.
    [Theory]
    [InlineData(1, 1)]
    [InlineData(3, 5)]
    [InlineData(4, 2)]
    [InlineData(5, 4)]
    [InlineData(1001, 70)]
    public void A_picture_decodes_to_its_own_pixels(int width, int height)
    {
        uint[] pixels = Pixels(width, height);
        using SKBitmap decoded = SKBitmap.Decode(PngWriter.Write(pixels, width, 2.5));
        Assert.Equal((width, height), (decoded.Width, decoded.Height));
        Assert.Equal(pixels.Select(pixel => new SKColor(pixel | 0xFF000000)), decoded.Pixels);
    }

    [Fact]
    public void Every_chunk_has_a_true_check_sum()
    {
        byte[] png = PngWriter.Write(Pixels(50, 40), 50, 2.5);
        Assert.Equal(["IHDR", "tEXt", "pHYs", "IDAT", "IEND"], Chunks(png).Select(c => c.Type));
        Assert.All(Chunks(png), c => Assert.Equal(c.Stated, c.Computed));
    }

    // 2.5 pixels for a point are 180 for an inch of 0.0254 m.
    [Fact]
    public void The_print_size_is_that_of_the_picture()
    {
        byte[] png = PngWriter.Write(Pixels(5, 4), 5, 2.5);
        int at = png.AsSpan().IndexOf("pHYs"u8);
        Assert.Equal((int)Math.Round(180 / 0.0254), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(at + 4)));
    }

    [Fact]
    public void Only_our_own_pictures_are_known_as_ours()
    {
        Assert.False(PngMark.IsOn(Others()));
        Assert.True(PngMark.IsOn(Ours()));
        Assert.True(PngMark.IsOn(Ours().AsSpan(0, 80)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(7)]
    [InlineData(20)]
    [InlineData(40)]
    public void The_beginning_of_a_file_that_stops_early_is_not_ours(int length) =>
        Assert.False(PngMark.IsOn(Ours().AsSpan(0, length)));

    [Fact]
    public void A_chunk_that_claims_more_than_there_is_is_not_ours()
    {
        byte[] png = Others();
        BinaryPrimitives.WriteUInt32BigEndian(png.AsSpan(33), uint.MaxValue);
        Assert.False(PngMark.IsOn(png));
    }

    private static byte[] Ours() => PngWriter.Write(Pixels(5, 4), 5, 2.5);

    private static byte[] Others()
    {
        using var bitmap = new SKBitmap(5, 4);
        bitmap.Erase(SKColors.SteelBlue);
        return bitmap.Encode(SKEncodedImageFormat.Png, 100).ToArray();
    }

    // All different, with some in what should be transparency, which is not written.
    private static uint[] Pixels(int width, int height) => [.. Enumerable.Range(0, width * height).Select(i => (uint)i * 2654435761)];

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
