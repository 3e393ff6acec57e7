using LinkMargin.Cli.Invoking;

namespace LinkMargin.Cli.Tests.Options;

public sealed class TypedWordsTests
{
    [Theory]
    [InlineData("there is no command 'materialz'; did you mean 'materials'?", "materialz")]
    [InlineData("there is no command 'materialz'; did you mean 'materials'?", "materialz", "x", "--json")]
    [InlineData("there is no option '--jsn' for 'linkmargin materials'; did you mean '--json'?", "materials", "--jsn")]
    [InlineData("there is no option '--jsn' for 'linkmargin materials'; did you mean '--json'?", "materials", "brick", "--jsn")]
    [InlineData("there is no option '--material' for 'linkmargin materials'; did you mean '--materials'?", "materials", "--material=x")]
    [InlineData("there is no option '--jsn' for 'linkmargin materials'; did you mean '--json'?", "materials", "--materials", "--jsn")]
    [InlineData("there is no option '--jsn' for 'linkmargin materials'; did you mean '--json'?", "--jsn", "materials")]
    [InlineData("'glass' is one word too many for 'linkmargin materials'; put a name or length with spaces in quotes", "materials", "brick", "glass")]
    [InlineData("--json takes no value; write --json alone", "materials", "--json=yes")]
    [InlineData("--materials is given 2 times; give it once", "materials", "--materials", "a", "--materials", "b")]
    public void A_slip_gets_one_sentence_with_the_nearest_valid_word(string sentence, params string[] words)
    {
        CommandRun run = CommandRun.Of(words);

        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Equal($"linkmargin: {sentence}\n", run.Error);
    }

    [Theory]
    [InlineData("materials", "--materials")]
    [InlineData("materials", "--materials", "--json")]
    public void An_option_without_its_value_is_reported_what_it_needs(params string[] words)
    {
        CommandRun run = CommandRun.Of(words);

        Assert.Equal(2, run.ExitCode);
        Assert.StartsWith("linkmargin: --materials needs DIR after it: ", run.Error, StringComparison.Ordinal);
        Assert.Single(run.Error.TrimEnd().Split('\n'));
    }

    [Fact]
    public void No_word_at_all_gets_the_words_there_are()
    {
        CommandRun run = CommandRun.Of();

        Assert.Equal(2, run.ExitCode);
        Assert.StartsWith("linkmargin: name a command: ", run.Error, StringComparison.Ordinal);
        Assert.Contains("materials", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_goes_to_the_output_and_tells_the_exit_codes()
    {
        CommandRun run = CommandRun.Of("--help");

        Assert.Equal(0, run.ExitCode);
        Assert.Empty(run.Error);
        Assert.Contains(ExitCodes.Explained, run.OutputUnwrapped, StringComparison.Ordinal);
    }

    [Fact]
    public void The_version_is_reported() => Assert.Matches(@"^0\.\d+\.\d+", CommandRun.Of("--version").Output);

    [Fact]
    public void A_word_behind_two_hyphens_is_a_name_whatever_it_begins_with()
    {
        CommandRun run = CommandRun.Of("materials", "--", "--brick");

        Assert.StartsWith("linkmargin: the tables have no row '--brick'", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_word_that_begins_with_an_at_sign_is_no_file_of_further_words()
    {
        CommandRun run = CommandRun.Of("materials", "@brick");

        Assert.StartsWith("linkmargin: the tables have no row '@brick'", run.Error, StringComparison.Ordinal);
    }
}
