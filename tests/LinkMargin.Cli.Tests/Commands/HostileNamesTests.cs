namespace LinkMargin.Cli.Tests.Commands;

/// <summary>Nothing that a person typed or a file holds commands the terminal.</summary>
public sealed class HostileNamesTests : IDisposable
{
    private const string Hostile = "x\u001b[2J\u202e\u2028y";

    private readonly ScratchFolder folder = new();

    public HostileNamesTests() => folder.Put("house.yaml", SampleFile.Modest);

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("explain|house.yaml|--spot|HOSTILE|--seat|sofa")]
    [InlineData("explain|house.yaml|--spot|den rack|--seat|HOSTILE")]
    [InlineData("compare|house.yaml|--what-if|HOSTILE")]
    [InlineData("compare|house.yaml|--what-if|close door HOSTILE")]
    [InlineData("compare|house.yaml|--what-if|move spot den rack to HOSTILE")]
    [InlineData("compare|house.yaml|--occupied|HOSTILE")]
    [InlineData("compare|house.yaml|--model|HOSTILE")]
    [InlineData("compare|house.yaml|--confidence|HOSTILE")]
    [InlineData("compare|HOSTILE")]
    [InlineData("compare|house.yaml|HOSTILE")]
    [InlineData("compare|house.yaml|--HOSTILE")]
    [InlineData("HOSTILE")]
    [InlineData("map|house.yaml|--level|HOSTILE")]
    [InlineData("map|house.yaml|--cell|HOSTILE")]
    [InlineData("map|house.yaml|--show|HOSTILE")]
    [InlineData("materials|HOSTILE")]
    [InlineData("fit|house.yaml|HOSTILE")]
    [InlineData("compare|house.yaml|--fitted|HOSTILE")]
    [InlineData("compare|house.yaml|--materials|HOSTILE")]
    [InlineData("check|evil.yaml")]
    [InlineData("check|broken.yaml")]
    public void Neither_output_nor_talk_holds_what_commands_a_terminal(string line)
    {
        string[] words = line.Replace("HOSTILE", Hostile, StringComparison.Ordinal).Split('|');
        folder.Put("evil.yaml", SampleFile.Modest.Replace("sofa", "\"so\\e[2J\\u202efa\"", StringComparison.Ordinal));
        folder.Put("broken.yaml", SampleFile.Modest + "\n\u202e\u2028[}: x\n");
        CommandRun run = CommandRun.In(folder.Path, words);
        Assert.Equal(2, run.ExitCode);
        Assert.DoesNotContain(run.Output + run.Error, c => (char.IsControl(c) && c != '\n') || c is '\u202e' or '\u2028');
    }

    [Fact]
    public void A_very_long_word_is_cut() =>
        Assert.InRange(CommandRun.In(folder.Path, "explain", "house.yaml", "--spot", new string('x', 50_000), "--seat", "sofa").Error.Length, 10, 500);

    [Fact]
    public void A_name_typed_in_pieces_finds_the_one_in_the_file()
    {
        folder.Put("cafe.yaml", SampleFile.Modest.Replace("sofa", "caf\u00e9", StringComparison.Ordinal));
        Assert.NotEqual(2, CommandRun.In(folder.Path, "explain", "cafe.yaml", "--spot", "den rack", "--seat", "cafe\u0301").ExitCode);
        Assert.NotEqual(2, CommandRun.In(folder.Path, "compare", "cafe.yaml", "--what-if", "turn seat cafe\u0301 to 90").ExitCode);
    }
}
