using LinkMargin.Cli.Tests.Processes;

namespace LinkMargin.Cli.Tests.Commands;

/// <summary>What a shell is told could stand at the end of a line, and the manual page.</summary>
public sealed class CompletionTests : IDisposable
{
    private readonly ScratchFolder folder = new();

    public CompletionTests() => folder.Put("house.yaml", SampleFile.Modest);

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("comp", "compare", "completion")]
    [InlineData("compare|house.yaml|--con", "--confidence")]
    [InlineData("compare|house.yaml|--js", "--json")]
    [InlineData("explain|house.yaml|--spot|", "den rack", "loft shelf")]
    [InlineData("explain|house.yaml|--spot|DEN", "den rack")]
    [InlineData("explain|house.yaml|--spot|\"den r", "den rack")]
    [InlineData("explain|house.yaml|--spot|den\\ r", "den rack")]
    [InlineData("explain|--seat|so|house.yaml|--seat|", "sofa", "bench", "desk")]
    [InlineData("map|house.yaml|--level|l", "loft")]
    [InlineData("report|house.yaml|--paper|", "a4", "letter")]
    [InlineData("guide|unc", "uncertainty")]
    [InlineData("completion|", "bash", "zsh", "fish", "pwsh")]
    [InlineData("materials|brick-102", "brick-102", "brick-102-plastered")]
    [InlineData("compare|hou")]
    [InlineData("explain|missing.yaml|--spot|")]
    [InlineData("nonsense|")]
    public void What_could_stand_there_is_printed_a_line_each(string line, params string[] expected)
    {
        CommandRun run = CommandRun.In(folder.Path, ["completion", "words", "--", .. line.Split('|').Select(word => "=" + word)]);
        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.Equal(expected, run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public void A_house_with_errors_offers_no_names_and_no_message()
    {
        folder.Put("broken.yaml", "levels: [}");
        CommandRun run = CommandRun.In(folder.Path, "completion", "words", "--", "=explain", "=broken.yaml", "=--spot", "=");
        Assert.Equal((0, "", ""), (run.ExitCode, run.Output, run.Error));
    }

    [Theory]
    [InlineData("bash")]
    [InlineData("zsh")]
    [InlineData("fish")]
    [InlineData("pwsh")]
    public void Each_shell_has_a_script_that_asks_the_program(string shell)
    {
        CommandRun run = CommandRun.Of("completion", shell);
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("linkmargin completion words --", run.Output, StringComparison.Ordinal);
        CommandRun unknown = CommandRun.Of("completion", shell + "x");
        Assert.Equal(2, unknown.ExitCode);
        Assert.Contains(shell, unknown.Error, StringComparison.Ordinal);
    }

    /// <summary>Bash itself runs the script, on a line with an unfinished name.</summary>
    [UnixTheory]
    [InlineData("den", "den\\ rack\n")]
    [InlineData("'\"den'", "den rack\n")]
    public void Bash_completes_a_name_with_a_blank(string word, string expected)
    {
        folder.Put("try.sh", "linkmargin() { \"$P\" \"$@\"; }\n" + CommandRun.Of("completion", "bash").Output
            + $"COMP_WORDS=(linkmargin explain house.yaml --spot {word}); COMP_CWORD=4\n_linkmargin\nprintf '%s\\n' \"$COMPREPLY\"\n");
        CommandRun run = BuiltProgram.Run(folder.Path, "bash try.sh");
        Assert.Equal((expected, ""), (run.Output, run.Error));
    }

    [Fact]
    public void The_manual_page_names_every_command_and_option_of_the_help()
    {
        CommandRun run = CommandRun.Of("guide", "--man");
        Assert.Equal(0, run.ExitCode);
        Assert.StartsWith(".TH LINKMARGIN 1", run.Output, StringComparison.Ordinal);
        foreach (string command in (string[])["demo", "explain HOUSE", "report HOUSE", "completion SHELL"])
        {
            Assert.Contains($".SS \"{command}", run.Output, StringComparison.Ordinal);
        }

        Assert.Contains("\\fB\\-\\-what\\-if\\fR \\fIEDIT\\fR", run.Output, StringComparison.Ordinal);
        Assert.Contains("130 stopped by Ctrl\\-C", run.Output, StringComparison.Ordinal);
        Assert.Equal(2, CommandRun.Of("guide", "model", "--man").ExitCode);

        // A line that begins like a request is one.
        string[] requests = [".TH", ".SH", ".SS", ".TP", ".B", ".I"];
        Assert.All(run.Output.Split('\n').Where(line => line.StartsWith('.')), line => Assert.Contains(line.Split(' ')[0], requests));
    }
}
