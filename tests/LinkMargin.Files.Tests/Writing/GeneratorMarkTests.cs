using System.Buffers.Binary;
using System.Text;
using LinkMargin.Files.Writing;

namespace LinkMargin.Files.Tests.Writing;

public sealed class GeneratorMarkTests
{
    [Theory]
    [InlineData("# Written by LinkMargin 0.1\nx,y\n", true)]
    [InlineData("\uFEFF# Written by LinkMargin\n", true)]
    [InlineData("{\"generator\": \"LinkMargin\", \"features\": []}", true)]
    [InlineData("{\n  \"type\": \"FeatureCollection\",\n  \"generator\" :\"LinkMargin\"\n}", true)]
    [InlineData("{\"$comment\": \"Written by LinkMargin\"}", true)]
    [InlineData("", false)]
    [InlineData("x,y\n1,2\n# Written by LinkMargin\n", false)]
    [InlineData("{\"generator\": \"Another\"}", false)]
    [InlineData("{\"name\": \"LinkMargin\"}", false)]
    public void A_text_is_known_by_its_mark(string text, bool isOurs) => Assert.Equal(isOurs, GeneratorMark.IsOn(Encoding.UTF8.GetBytes(text)));

    [Fact]
    public void A_picture_is_known_by_its_software_entry()
    {
        Assert.True(GeneratorMark.IsOn(Png(("IHDR", new string('x', 13)), ("tEXt", "Software\0LinkMargin"), ("IDAT", "z"))));
        Assert.False(GeneratorMark.IsOn(Png(("IHDR", new string('x', 13)), ("tEXt", "Software\0Another"))));
        Assert.False(GeneratorMark.IsOn(Png(("IHDR", new string('x', 13)), ("tEXt", "Title\0LinkMargin"))));
        Assert.False(GeneratorMark.IsOn(Png(("IHDR", "Software\0LinkMargin"))));
    }

    [Fact]
    public void A_picture_cut_short_or_with_a_false_length_is_not_ours_and_does_no_harm()
    {
        byte[] whole = Png(("IHDR", new string('x', 13)), ("tEXt", "Software\0LinkMargin"));
        for (int length = 0; length < whole.Length; length++)
        {
            Assert.False(GeneratorMark.IsOn(whole.AsSpan(0, length)));
        }

        byte[] huge = [.. whole];
        BinaryPrimitives.WriteUInt32BigEndian(huge.AsSpan(8), uint.MaxValue);
        Assert.False(GeneratorMark.IsOn(huge));
    }

    private static byte[] Png(params (string Type, string Data)[] chunks)
    {
        List<byte> bytes = [0x89, .. "PNG\r\n"u8, 0x1A, (byte)'\n'];
        foreach ((string type, string data) in chunks)
        {
            byte[] length = new byte[4];
            BinaryPrimitives.WriteUInt32BigEndian(length, (uint)data.Length);
            bytes.AddRange([.. length, .. Encoding.Latin1.GetBytes(type), .. Encoding.Latin1.GetBytes(data), 0, 0, 0, 0]);
        }

        return [.. bytes];
    }
}
