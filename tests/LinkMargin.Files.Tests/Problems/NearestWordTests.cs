using CsCheck;
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
        Assert.Equal("the material table lists all 40", NearestWord.Advice("granite", many, "the material table"));
    }

    [Theory]
    [InlineData("door-hollow-extra-wide-white", "door-hollow-extra-wide-whine", true)]
    [InlineData("door-hollow-extra-wide-white", "door-hollow-xtra-wid-whi", true)]
    [InlineData("door-hollow-extra-wide-white", "door-hollow-xtra-wid-wh", false)]
    [InlineData("abc", "abd", true)]
    [InlineData("abc", "ade", false)]
    [InlineData("abcdef", "badcef", true)]
    [InlineData("abcdef", "badcfe", false)]
    public void A_third_of_the_letters_and_at_most_four_may_be_wrong(string word, string candidate, bool isNear) =>
        Assert.Equal(isNear ? candidate : null, NearestWord.Find(word, [candidate]));

    [Fact, Law]
    public void Slips_are_counted_as_the_plain_definition_counts_them() =>
        Gen.Select(Gen.String[Gen.Char['a', 'c'], 3, 12], Gen.String[Gen.Char['a', 'c'], 1, 12]).ForAll((a, b) =>
            Assert.Equal(Slow(a, b) <= Math.Clamp(a.Length / 3, 1, 4), NearestWord.Find(a, [b]) == b));

    /// <summary>The whole table, with no limit.</summary>
    private static int Slow(string a, string b)
    {
        int[,] d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            for (int j = 0; j <= b.Length; j++)
            {
                d[i, j] = i == 0 || j == 0 ? i + j : Math.Min(Math.Min(d[i - 1, j], d[i, j - 1]) + 1, d[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
                }
            }
        }

        return d[a.Length, b.Length];
    }
}
