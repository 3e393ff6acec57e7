using System.Buffers.Binary;
using System.Text;
using LinkMargin.Files.Writing;

namespace LinkMargin.Files.Tests.Writing;

public sealed class GeneratorMarkTests
{
    [Theory]
    [InlineData("{\"generator\": \"LinkMargin\", \"features\": []}", Author.Program)]
    [InlineData("{\n  \"type\": \"FeatureCollection\",\n  \"generator\" :\"LinkMargin\"\n}", Author.Program)]
    [InlineData("{\"$comment\": \"Written by LinkMargin\"}", Author.Program)]
    [InlineData("# Written by LinkMargin 0.1\nx,y\n", Author.ProgramThenPerson)] // older versions wrote no checksum
    [InlineData("\uFEFF# Written by LinkMargin\n", Author.ProgramThenPerson)]
    [InlineData("# Written by LinkMargin", Author.ProgramThenPerson)]
    [InlineData("", Author.Other)]
    [InlineData("x,y\n1,2\n# Written by LinkMargin\n", Author.Other)]
    [InlineData("{\"generator\": \"Another\"}", Author.Other)]
    [InlineData("{\"name\": \"LinkMargin\"}", Author.Other)]
    public void A_text_is_known_by_its_mark(string text, object author) => Assert.Equal(author, AuthorOf(Encoding.UTF8.GetBytes(text)));

    [Fact]
    public void A_sealed_text_is_the_programs_until_any_byte_of_it_is_changed_put_in_or_taken_out()
    {
        byte[] whole = Encoding.UTF8.GetBytes(GeneratorMark.Sealed(GeneratorMark.CommentLine + ": two\nshift: 2.1 dB # ü\n"));
        Assert.Equal(Author.Program, AuthorOf(whole));
        for (int i = 0; i <= whole.Length; i++)
        {
            Assert.NotEqual(Author.Program, AuthorOf([.. whole[..i], (byte)' ', .. whole[i..]]));
            if (i < whole.Length)
            {
                Assert.NotEqual(Author.Program, AuthorOf([.. whole[..i], (byte)(whole[i] ^ 1), .. whole[(i + 1)..]]));
                Assert.NotEqual(Author.Program, AuthorOf([.. whole[..i], .. whole[(i + 1)..]]));
            }
        }
    }

    [Fact]
    public void A_sealed_text_longer_than_the_part_that_is_looked_at_first_is_known_too()
    {
        byte[] whole = Encoding.UTF8.GetBytes(GeneratorMark.Sealed(GeneratorMark.CommentLine + "\n" + new string('x', 3 * GeneratorMark.HeadBytes) + "\n"));
        Assert.Equal(Author.Program, AuthorOf(whole));
        whole[2 * GeneratorMark.HeadBytes] = (byte)'y';
        Assert.Equal(Author.ProgramThenPerson, AuthorOf(whole));
    }

    // From memory of the test vectors published with the function (Fowler, Noll, Vo).
    [Theory]
    [InlineData("", 0xcbf29ce484222325)]
    [InlineData("a", 0xaf63dc4c8601ec8c)]
    [InlineData("foobar", 0x85944171f73967e8)]
    public void The_checksum_has_its_published_values(string text, ulong sum) => Assert.Equal(sum, GeneratorMark.Checksum(Encoding.UTF8.GetBytes(text)));

    [Fact]
    public void A_picture_is_known_by_its_software_entry()
    {
        Assert.Equal(Author.Program, AuthorOf(Png(("IHDR", new string('x', 13)), ("tEXt", "Software\0LinkMargin"), ("IDAT", "z"))));
        Assert.Equal(Author.Other, AuthorOf(Png(("IHDR", new string('x', 13)), ("tEXt", "Software\0Another"))));
        Assert.Equal(Author.Other, AuthorOf(Png(("IHDR", new string('x', 13)), ("tEXt", "Title\0LinkMargin"))));
        Assert.Equal(Author.Other, AuthorOf(Png(("IHDR", "Software\0LinkMargin"))));
    }

    [Fact]
    public void A_picture_cut_short_or_with_a_false_length_is_not_ours_and_does_no_harm()
    {
        byte[] whole = Png(("IHDR", new string('x', 13)), ("tEXt", "Software\0LinkMargin"));
        for (int length = 0; length < whole.Length; length++)
        {
            Assert.Equal(Author.Other, AuthorOf(whole[..length]));
        }

        byte[] huge = [.. whole];
        BinaryPrimitives.WriteUInt32BigEndian(huge.AsSpan(8), uint.MaxValue);
        Assert.Equal(Author.Other, AuthorOf(huge));
    }

    private static Author AuthorOf(byte[] bytes)
    {
        using MemoryStream file = new(bytes);
        return GeneratorMark.AuthorOf(file);
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
