using LinkMargin.Plots.Drawing;

namespace LinkMargin.Plots.Tests.Drawing;

public class LetteringTests
{
    private const string Sentence = "Console typical, controller typical, direct path in three dimensions.";

    [Fact]
    public void Wrapped_lines_fit_and_lose_no_word()
    {
        using var lettering = new Lettering(20, isBold: false);
        IReadOnlyList<string> lines = lettering.Wrap(Sentence, 200);
        Assert.True(lines.Count > 1);
        Assert.All(lines, l => Assert.True(lettering.WidthOf(l) <= 200));
        Assert.Equal(Sentence, string.Join(' ', lines));
    }

    [Fact]
    public void A_word_wider_than_the_line_is_cut_with_an_ellipsis()
    {
        using var lettering = new Lettering(20, isBold: false);
        string line = Assert.Single(lettering.Wrap(new string('W', 40), 100));
        Assert.EndsWith("…", line, StringComparison.Ordinal);
        Assert.True(lettering.WidthOf(line) <= 100);
    }

    [Fact]
    public void A_text_without_words_has_no_lines()
    {
        using var lettering = new Lettering(20, isBold: false);
        Assert.Empty(lettering.Wrap("  ", 100));
    }
}
