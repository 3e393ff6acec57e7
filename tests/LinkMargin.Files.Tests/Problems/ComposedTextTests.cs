using System.Globalization;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tests.Problems;

public sealed class ComposedTextTests
{
    /// <summary>
    /// Random runs of letters, marks, jamo and composed characters, and their form C as another implementation gives it
    /// (unicodedata of CPython 3.11, Unicode 14.0).
    /// </summary>
    private static readonly string[] Rows =
    [
        "344 300 AC00 > 308 301 300 AC00",
        "5B7 342 > 5B7 342",
        "1D157 11AB 307 5B7 61 > 1D157 11AB 5B7 307 61",
        "313 200D 41 342 D55C > 313 200D 41 342 D55C",
        "1100 FB1D 307 93C 61 61 61 > 1100 5D9 93C 5B4 307 61 61 61",
        "110BA 41 1D157 11AB 313 61 110A5 > 110BA 41 1D157 11AB 313 61 110A5",
        "342 5B7 2126 > 5B7 342 3A9",
        "1E0A 1100 1100 > 1E0A 1100 1100",
        "958 61 3B1 2126 307 > 915 93C 61 3B1 3A9 307",
        "958 323 212B > 915 93C 323 C5",
        "5BC 313 5BC 1161 915 958 FB1D > 5BC 5BC 313 1161 915 915 93C 5D9 5B4",
        "5BC 1D165 FB1D 65 5D0 > 5BC 1D165 5D9 5B4 65 5D0",
        "1D165 3B1 1112 > 1D165 3B1 1112",
        "2126 1D15E 301 342 > 3A9 1D157 1D165 301 342",
        "5BC 307 345 110A5 1D165 1D15E 5B7 > 5BC 307 345 110A5 1D165 1D157 5B7 1D165",
        "61 5D0 65 915 1F468 FB1D FB1D > 61 5D0 65 915 1F468 5D9 5B4 5D9 5B4",
        "345 345 5BC 1100 41 > 5BC 345 345 1100 41",
        "110BA 2126 1100 > 110BA 3A9 1100",
        "5BC 1E0A 344 1E0A 1F82 > 5BC 1E0A 308 301 1E0A 1F82",
        "2126 200D 41 1D157 > 3A9 200D 41 1D157",
        "5BC 31B 110A5 2126 11AB 313 73 > 5BC 31B 110A5 3A9 11AB 313 73",
        "1D15E 344 2126 1161 5BC > 1D157 1D165 308 301 3A9 1161 5BC",
        "5B7 1E0A 3B1 1E0A 41 > 5B7 1E0A 3B1 1E0A 41",
        "110BA 1F468 1F468 212B 1F82 200D > 110BA 1F468 1F468 C5 1F82 200D",
        "1100 1112 > 1100 1112",
        "FB1D 1112 301 2126 AC00 65 > 5D9 5B4 1112 301 3A9 AC00 65",
        "300 301 61 342 41 D55C 11A7 > 300 301 61 342 41 D55C 11A7",
        "323 1F468 1112 1E0A > 323 1F468 1112 1E0A",
        "300 345 345 AC00 > 300 345 345 AC00",
        "345 D55C 958 1F82 93C 5B7 > 345 D55C 915 93C 1F82 93C 5B7",
        "323 61 915 1D157 212B > 323 61 915 1D157 C5",
        "1161 AC00 307 AC00 5BC > 1161 AC00 307 AC00 5BC",
        "200D 313 61 > 200D 313 61",
        "61 1D165 327 > 61 327 1D165",
        "345 342 > 342 345",
        "5BC 313 110BA 1100 110A5 342 1100 > 110BA 5BC 313 1100 110A5 342 1100",
        "61 1D165 344 93C 313 73 > E4 93C 1D165 301 313 73",
        "915 31B 11AB 73 915 300 300 > 915 31B 11AB 73 915 300 300",
        "915 345 3B1 344 > 915 345 3B1 308 301",
        "31B 41 2126 65 > 31B 41 3A9 65",
        "11AB 344 1F82 345 1F468 5BC > 11AB 308 301 1F82 345 1F468 5BC",
        "1D157 1161 > 1D157 1161",
        "307 11AB 344 313 > 307 11AB 308 301 313",
        "1161 5B7 307 1D157 958 5BC > 1161 5B7 307 1D157 915 93C 5BC",
        "61 93C 1F468 1D165 958 > 61 93C 1F468 1D165 915 93C",
        "345 1161 > 345 1161",
        "344 31B 212B 313 > 31B 308 301 C5 313",
        "D55C 307 1D157 > D55C 307 1D157",
        "1E0A 110BA 5B7 110BA 11A7 300 > 1E0A 110BA 110BA 5B7 11A7 300",
        "65 301 31B 345 345 110BA 11AB > E9 110BA 31B 345 345 11AB",
        "212B 200D 5BC AC00 > C5 200D 5BC AC00",
        "212B 212B 323 958 > C5 1EA0 30A 915 93C",
        "200D 5B7 31B > 200D 5B7 31B",
        "2126 307 93C 65 3B1 300 > 3A9 93C 307 65 1F70",
        "327 31B 212B 323 1F468 > 327 31B 1EA0 30A 1F468",
        "1D157 300 344 2126 1100 344 > 1D157 300 308 301 3A9 1100 308 301",
        "D55C 1D15E > D55C 1D157 1D165",
        "344 110BA 323 1F82 > 110BA 323 308 301 1F82",
        "307 65 958 41 > 307 65 915 93C 41",
        "41 301 3B1 323 65 1161 > C1 3B1 323 65 1161",
    ];

    [Fact]
    public void The_form_is_that_of_another_implementation()
    {
        foreach (string[] row in Rows.Select(row => row.Split(" > ")))
        {
            Assert.Equal(row[1], Codes(ComposedText.Of(Text(row[0]))));
        }
    }

    // Rows of the standard (UAX #15, tables 3 and 4): singletons, order of marks, exclusions, Hangul.
    [Theory]
    [InlineData("212B", "C5")]
    [InlineData("1E9B 323", "1E9B 323")]
    [InlineData("64 323 307", "1E0D 307")]
    [InlineData("64 307 323", "1E0D 307")]
    [InlineData("958", "915 93C")]
    [InlineData("1112 1161 11AB", "D55C")]
    [InlineData("65 301", "E9")]
    public void Forms_of_the_standard(string written, string composed) => Assert.Equal(composed, Codes(ComposedText.Of(Text(written))));

    [Fact]
    public void A_composed_text_is_not_changed_again() =>
        Assert.All(Rows, row => Assert.Equal(ComposedText.Of(Text(row.Split(" > ")[0])), ComposedText.Of(ComposedText.Of(Text(row.Split(" > ")[0])))));

    [Fact]
    public void Half_a_character_stays_half() => Assert.Equal("e\ud800\u00e9", ComposedText.Of("e\ud800e\u0301"));

    private static string Text(string codes) => string.Concat(codes.Split(' ').Select(c => char.ConvertFromUtf32(int.Parse(c, NumberStyles.HexNumber, CultureInfo.InvariantCulture))));

    private static string Codes(string text) => string.Join(' ', text.EnumerateRunes().Select(r => r.Value.ToString("X", CultureInfo.InvariantCulture)));
}
