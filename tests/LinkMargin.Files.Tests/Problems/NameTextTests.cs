using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tests.Problems;

public sealed class NameTextTests
{
    [Theory]
    [InlineData("den\u202esofa", "holds U+202E, which changes the direction of the text around it; remove it")]
    [InlineData("den\u2067sofa", "holds U+2067, which changes the direction of the text around it; remove it")]
    [InlineData("den\u001b[2J", "holds U+001B, a control character; remove it")]
    [InlineData("den\u0085x", "holds U+0085, a control character; remove it")]
    [InlineData("den\nx", "holds U+000A, a control character; remove it")]
    [InlineData("den\u2028x", "holds U+2028, a line break; remove it")]
    [InlineData("den\u2029x", "holds U+2029, a line break; remove it")]
    [InlineData("\u200b\u2060", "holds only invisible characters; write at least one visible character")]
    public void What_no_name_may_hold_is_reported_by_its_number(string name, string fault) => Assert.Equal(fault, NameText.Fault(name));

    // Attributes cannot hold half a character.
    [Fact]
    public void Half_a_character_is_reported_by_its_number() => Assert.Equal("holds U+D83D, half of a character; remove it", NameText.Fault("den\ud83d"));

    [Theory]
    [InlineData("Wohnzimmer Süd")]
    [InlineData("نشیمن\u200cخانه")]
    [InlineData("क्\u200dष")]
    [InlineData("👨\u200d👩\u200d👧 sofa")]
    [InlineData("❤\ufe0f")]
    [InlineData("מרפסת\u200f")]
    public void Scripts_and_emoji_keep_their_joiners(string name)
    {
        Assert.Null(NameText.Fault(name));
        Assert.Equal(name, NameText.Normal(name));
    }

    [Theory]
    [InlineData("sofa", "so\u200bfa")]
    [InlineData("sofa", "so\u00adfa")]
    [InlineData("sofa", "sofa\u2060")]
    [InlineData("sofa", "sofa\ufe0f")]
    [InlineData("sofa", "s\u200do\u200cfa")]
    [InlineData("den sofa", "den\u00a0sofa")]
    [InlineData("caf\u00e9", "cafe\u200b\u0301")]
    public void Names_that_differ_only_in_what_cannot_be_seen_look_the_same(string one, string other) =>
        Assert.Equal(NameText.Look(one), NameText.Look(other));

    [Theory]
    [InlineData("sofa", "Sofa")]
    [InlineData("sofa", "sofas")]
    [InlineData("cafe", "caf\u00e9")]
    public void Names_that_differ_in_what_is_seen_look_different(string one, string other) =>
        Assert.NotEqual(NameText.Look(one), NameText.Look(other));

    [Theory]
    [InlineData("a\u001b[31mb", "'a<U+001B>[31mb'")]
    [InlineData("a\u202eb", "'a<U+202E>b'")]
    [InlineData("a\nb\u2028", "'a<U+000A>b<U+2028>'")]
    [InlineData("plain", "'plain'")]
    public void A_quotation_shows_what_cannot_be_printed(string value, string shown) => Assert.Equal(shown, Quote.Of(value));

    [Fact]
    public void A_quotation_is_cut_between_whole_characters()
    {
        string shown = Quote.Of(string.Concat(Enumerable.Repeat("😀", 5000)));
        Assert.InRange(shown.Length, 50, 70);
        Assert.EndsWith("…'", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("U+D8", shown, StringComparison.Ordinal);
        Assert.InRange(Quote.Sentence(new string('x', 10_000)).Length, 200, 310);
        Assert.Equal("two lines", Quote.Sentence("two\nlines."));
    }
}
