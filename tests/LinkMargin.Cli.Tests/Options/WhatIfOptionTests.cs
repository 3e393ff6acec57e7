using System.Text.Json;

namespace LinkMargin.Cli.Tests.Options;

public sealed class WhatIfOptionTests : IDisposable
{
    private const string ToTheSofa = "move spot loft shelf to 3 3 0.7 on den";

    private readonly ScratchFolder folder = new();

    public WhatIfOptionTests()
    {
        folder.Put("house.yaml", SampleFile.Modest);
        folder.Put("by-hand.yaml", SampleFile.Modest.Replace(
            "name: loft shelf, level: loft, at: [7, 4, 1.5]", "name: loft shelf, level: den, at: [3, 3, 0.7]", StringComparison.Ordinal));
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Gives_what_the_file_gives_when_it_is_edited_by_hand_and_leaves_the_file_alone()
    {
        CommandRun byHand = Run("compare", "by-hand.yaml", "--json"), edited = Run("compare", "house.yaml", "--json", "--what-if", ToTheSofa);

        Assert.Equal(Links(byHand.Json), Links(edited.Json));
        Assert.Equal(Links(Run("compare", "house.yaml", "--json").Json), Links(edited.Json.GetProperty("asWritten")));
        Assert.Equal([ToTheSofa], edited.Json.GetProperty("whatIf").EnumerateArray().Select(e => e.GetString()));
        Assert.False(byHand.Json.TryGetProperty("whatIf", out _));
        Assert.Equal(SampleFile.Modest, File.ReadAllText(folder.PathOf("house.yaml")));
    }

    [Fact]
    public void Compare_shows_before_and_after()
    {
        CommandRun run = Run("compare", "house.yaml", "--what-if", ToTheSofa, "--what-if", "move seat bench to 3 3.5");

        Assert.StartsWith("What if spot 'loft shelf' is at 3.00 m east, 3.00 m north, 0.70 m high on den and seat 'bench' is at 3.00 m east, 3.50 m north, ", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("Effect of the changes", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Effect of the changes", Run("compare", "house.yaml").Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("explain", "--spot", "den rack", "--seat", "desk")]
    [InlineData("map", "--cell", "2", "--spot", "den rack", "--level", "den")]
    [InlineData("map", "--paths", "--spot", "den rack", "--seat", "desk")]
    [InlineData("check")]
    public void Every_command_that_reads_a_house_takes_edits_and_says_so(params string[] words)
    {
        string[] edited = [words[0], "house.yaml", .. words[1..], "--what-if", "turn seat desk to east"];

        Assert.StartsWith("What if seat 'desk' faces east.\n", Run(edited).Output, StringComparison.Ordinal);
        Assert.Equal("turn seat desk to east", Run([.. edited, "--json"]).Json.GetProperty("whatIf")[0].GetString());
    }

    [Fact]
    public void What_is_wrong_with_edits_is_reported_of_all_of_them_at_once()
    {
        CommandRun run = Run("compare", "house.yaml", "--what-if", "turn seat dest to 4", "--what-if", "opn door x", "--what-if", "turn seat desk to 4");

        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Equal(
            "linkmargin: --what-if 'turn seat dest to 4' finds no seat 'dest'; did you mean 'desk'?\n"
                + "linkmargin: --what-if 'opn door x' is not an edit; did you mean 'open'?\n",
            run.Error);
    }

    [Fact]
    public void An_edit_must_follow_the_option() =>
        Assert.StartsWith("linkmargin: --what-if needs EDIT after it: ", Run("compare", "house.yaml", "--what-if").Error, StringComparison.Ordinal);

    private static string[] Links(JsonElement comparison) => [.. comparison.GetProperty("links").EnumerateArray().Select(link => JsonSerializer.Serialize(link))];

    private CommandRun Run(params string[] words) => CommandRun.In(folder.Path, words);
}
