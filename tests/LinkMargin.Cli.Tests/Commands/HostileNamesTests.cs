namespace LinkMargin.Cli.Tests.Commands;

/// <summary>Nothing that a person typed or a file holds commands the terminal.</summary>
public sealed class HostileNamesTests : IDisposable
{
    private const string Hostile = "x\u001b[2J\u202e\u2028y";

    private readonly ScratchFolder folder = new();

    public HostileNamesTests() => folder.Put("house.yaml", SampleFile.Modest);

    public void Dispose() => folder.Dispose();

    public static TheoryData<string[]> Commands => new()
    {
        new[] { "explain", "house.yaml", "--spot", Hostile, "--seat", "sofa" },
        new[] { "explain", "house.yaml", "--spot", "den rack", "--seat", Hostile },
        new[] { "compare", "house.yaml", "--what-if", Hostile },
        new[] { "compare", "house.yaml", "--what-if", "close door " + Hostile },
        new[] { "compare", "house.yaml", "--what-if", $"move spot den rack to {Hostile}" },
        new[] { "compare", "house.yaml", "--occupied", Hostile },
        new[] { "compare", "house.yaml", "--model", Hostile },
        new[] { "compare", "house.yaml", "--confidence", Hostile },
        new[] { "compare", Hostile },
        new[] { "compare", "house.yaml", Hostile },
        new[] { "compare", "house.yaml", "--" + Hostile },
        new[] { Hostile },
        new[] { "map", "house.yaml", "--level", Hostile },
        new[] { "map", "house.yaml", "--cell", Hostile },
        new[] { "map", "house.yaml", "--show", Hostile },
        new[] { "materials", Hostile },
        new[] { "fit", "house.yaml", Hostile },
        new[] { "compare", "house.yaml", "--fitted", Hostile },
        new[] { "compare", "house.yaml", "--materials", Hostile },
        new[] { "check", "evil.yaml" },
        new[] { "check", "broken.yaml" },
    };

    [Theory]
    [MemberData(nameof(Commands))]
    public void Neither_output_nor_talk_holds_what_commands_a_terminal(string[] words)
    {
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
