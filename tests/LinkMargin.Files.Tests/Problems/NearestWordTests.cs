using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tests.Problems;

public sealed class NearestWordTests
{
    private static readonly string[] Words = ["drywall-stud", "drywall-double", "brick-102", "door-hollow"];

    [Theory]
    [InlineData("drywal-stud", "drywall-stud")]
    [InlineData("Drywall Stud", "drywall-stud")]
    [InlineData("drywall_duoble", "drywall-double")]
    [InlineData("brick-120", "brick-102")]
    public void A_slip_finds_the_word_meant(string word, string meant) => Assert.Equal(meant, NearestWord.Find(word, Words));

    [Theory]
    [InlineData("granite")]
    [InlineData("")]
    public void A_word_far_from_all_finds_none(string word) => Assert.Null(NearestWord.Find(word, Words));

    [Fact]
    public void A_monstrous_word_is_not_compared() => Assert.Null(NearestWord.Find(new string('x', 1_000_000), Words));

    [Fact]
    public void Advice_names_the_near_word_or_lists_the_words_or_says_where_they_are()
    {
        Assert.Equal("did you mean 'brick-102'?", NearestWord.Advice("brick-103", Words));
        Assert.Equal("write one of: drywall-stud, drywall-double, brick-102, door-hollow", NearestWord.Advice("granite", Words));
        string[] many = [.. Enumerable.Range(0, 40).Select(i => $"word-number-{i}")];
        Assert.Equal("see the material table for the 40 there are", NearestWord.Advice("granite", many, "the material table"));
    }
}
