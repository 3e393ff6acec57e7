using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Tests.Documents;

namespace LinkMargin.Cli.Tests.Invoking;

/// <summary>What a command ends with, what its help says of that, and what the guide's table says.</summary>
public sealed class ExitCodeTests : IDisposable
{
    private static readonly string GuideRow = ProjectDocument.Guide("commands").Lines
        .Single(line => line.StartsWith("| 1 | done, but", StringComparison.Ordinal));

    private readonly ScratchFolder folder = new();

    public ExitCodeTests()
    {
        folder.Put("short.yaml", SampleFile.Text); // one of its seats asks for more than any spot gives
        folder.Put("hopeless.yaml", SampleFile.Text.Replace("required: 15 dB", "required: 60 dB", StringComparison.Ordinal).Replace("required: 20 dB", "required: 60 dB", StringComparison.Ordinal));
        folder.Put("readings.csv", "transmitter,receiver,received\nden rack,sofa,-52\nloft shelf,desk,-55\n");
    }

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("check short.yaml", 0)]
    [InlineData("compare short.yaml --model direct", 1)]
    [InlineData("explain short.yaml --spot loft*shelf --seat bench --model direct", 1)]
    [InlineData("explain short.yaml --spot den*rack --seat sofa --model direct", 0)]
    [InlineData("report short.yaml --cell 1 --model direct", 1)]
    [InlineData("improve hopeless.yaml --model direct", 1)]
    [InlineData("place short.yaml --model direct --grid 1", 1)]
    [InlineData("map short.yaml --model direct --cell 1", 0)]
    [InlineData("fit short.yaml readings.csv --model direct", 0)]
    [InlineData("materials brick-102", 0)]
    [InlineData("new new.yaml", 0)]
    [InlineData("demo --model direct --nonsense", 2)]
    [InlineData("compare absent.yaml", 2)]
    public void A_seat_short_of_its_margin_ends_a_command_as_its_help_and_the_guide_say(string command, int exitCode)
    {
        string[] words = [.. command.Split(' ').Select(word => word.Replace('*', ' '))];
        Assert.Equal(exitCode, CommandRun.In(folder.Path, words).ExitCode);

        string help = CommandRun.Of(words[0], "--help").OutputUnwrapped;
        Assert.Contains("Exit codes: 0 done; ", help, StringComparison.Ordinal);
        Assert.Contains("2 could not be done; 130 or 143 stopped.", help, StringComparison.Ordinal);
        bool saysOne = help.Contains("; 1 done, but ", StringComparison.Ordinal);
        bool canEndWithOne = words[0] is "compare" or "explain" or "improve" or "place" or "report";
        Assert.True(saysOne || exitCode != 1);
        Assert.Equal(canEndWithOne, saysOne);
        Assert.Equal(canEndWithOne, GuideRow.Contains($"`{words[0]}`", StringComparison.Ordinal));
        Assert.Equal(canEndWithOne, ExitCodes.Explained.Contains($"({words[0]})", StringComparison.Ordinal));
    }
}
