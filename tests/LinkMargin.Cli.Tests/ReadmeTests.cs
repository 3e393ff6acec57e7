using System.Text.RegularExpressions;

namespace LinkMargin.Cli.Tests;

/// <summary>What the README says of commands, held to the program's own help.</summary>
public sealed partial class ReadmeTests
{
    private static readonly string[] Lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "README.md"));

    private static readonly string RootHelp = CommandRun.Of("--help").Output;

    private static readonly string[] ForAll = [.. OptionsIn(RootHelp.Split("Options:")[1].Split("Commands:")[0]).Except(["--version"])];

    public static TheoryData<string> Commands =>
        [.. CommandLine().Matches(RootHelp.Split("Commands:")[1]).Select(match => match.Groups[1].Value)];

    [Theory]
    [MemberData(nameof(Commands))]
    public void The_readme_lists_a_commands_own_options_and_no_others(string command)
    {
        IEnumerable<string> rows = Lines.Where(line => CommandCell().Match(line).Groups[1].Value == command);
        string[] own = [.. OptionsIn(CommandRun.Of(command, "--help").Output).Except(ForAll).Order(StringComparer.Ordinal)];
        Assert.Equal(own, OptionsIn(string.Join('\n', rows)).Order(StringComparer.Ordinal));
        Assert.NotEmpty(rows);
    }

    [Fact]
    public void The_readme_names_the_options_that_every_command_has()
    {
        string text = string.Join('\n', Lines);
        Assert.Contains("--json", ForAll);
        Assert.All(ForAll, option => Assert.Contains($"`{option}", text, StringComparison.Ordinal));
    }

    private static IEnumerable<string> OptionsIn(string text) => OptionWord().Matches(text).Select(match => match.Value).Distinct();

    [GeneratedRegex("(?<![a-z-])--[a-z]+")]
    private static partial Regex OptionWord();

    [GeneratedRegex(@"^\| `([a-z]+)[^`]*` \|")]
    private static partial Regex CommandCell();

    [GeneratedRegex(@"^  ([a-z]+)\b", RegexOptions.Multiline)]
    private static partial Regex CommandLine();
}
