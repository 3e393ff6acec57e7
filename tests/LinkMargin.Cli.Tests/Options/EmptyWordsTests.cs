using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Options;

namespace LinkMargin.Cli.Tests.Options;

/// <summary>A script that fills in what is not set leaves an empty word. It is told of as such, and nothing is made of it.</summary>
public sealed class EmptyWordsTests : IDisposable
{
    private static readonly Invocation Nowhere = new(TextWriter.Null, TextWriter.Null, "");

    private readonly ScratchFolder folder = new();

    public void Dispose() => folder.Dispose();

    /// <summary>Every option that takes a word, of every command; so that one that is added is asked for too.</summary>
    public static TheoryData<string, string> Options
    {
        get
        {
            TheoryData<string, string> rows = [];
            foreach (Command command in Commands())
            {
                foreach (Option option in command.Options.Concat(new CommonOptions().All).Where(o => o.Arity.MaximumNumberOfValues > 0))
                {
                    rows.Add(command.Name, option.Name);
                }
            }

            return rows;
        }
    }

    public static TheoryData<string> CommandsWithArguments => [.. Commands().Where(command => command.Arguments.Count > 0).Select(command => command.Name)];

    [Theory]
    [MemberData(nameof(Options))]
    public void An_option_says_that_nothing_stands_behind_it(string command, string option)
    {
        folder.Put("house.yaml", SampleFile.Modest);
        string[] house = command is "demo" or "materials" ? [] : ["house.yaml"];
        foreach (string blank in (string[])["", "  ", "\t", "\n", "\u00a0"])
        {
            foreach (string[] given in (string[][])[[option, blank], [$"{option}={blank}"]])
            {
                CommandRun run = CommandRun.In(folder.Path, [command, .. house, .. given]);

                Assert.Equal(2, run.ExitCode);
                Assert.Empty(run.Output);
                Assert.StartsWith($"linkmargin: {option} needs ", run.Error, StringComparison.Ordinal);
                Assert.Contains(given is [_, _] ? " after it, not an empty word: " : " after it", run.Error, StringComparison.Ordinal);
                Assert.Single(run.Error.TrimEnd().Split('\n'));
                Assert.Equal(["house.yaml"], folder.Files);
            }
        }
    }

    [Theory]
    [MemberData(nameof(CommandsWithArguments))]
    public void An_argument_says_so_too(string command)
    {
        foreach (string blank in (string[])["", "  ", "\t"])
        {
            CommandRun run = CommandRun.In(folder.Path, command, blank);

            Assert.Equal(2, run.ExitCode);
            Assert.Empty(run.Output);
            Assert.Matches($"^linkmargin: (HOUSE|FILE|NAME|TOPIC|SHELL) of 'linkmargin {command}' is an empty word; write ", run.Error);
            Assert.Single(run.Error.TrimEnd().Split('\n'));
            Assert.Empty(folder.Files);
        }
    }

    [Fact]
    public void The_second_argument_says_so_too()
    {
        folder.Put("house.yaml", SampleFile.Modest);
        CommandRun run = CommandRun.In(folder.Path, "fit", "house.yaml", "");
        Assert.Equal("linkmargin: MEASUREMENTS of 'linkmargin fit' is an empty word; write the file of measurements, such as measurements.csv\n", run.Error);
        Assert.Equal(2, run.ExitCode);
    }

    private static IEnumerable<Command> Commands() => CommandLineProgram.Create(Nowhere).Subcommands;
}
