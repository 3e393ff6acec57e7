using System.CommandLine;
using LinkMargin.Cli.Completion;
using LinkMargin.Cli.Invoking;
using LinkMargin.Files.Problems;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Commands;

/// <summary>Completion for shells.</summary>
internal static class CompletionCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation)
    {
        Argument<string> shell = new("SHELL")
        {
            Description = $"{string.Join(", ", CompletionScripts.Shells)}; or {CompletionScripts.Words}, which the scripts use: it prints the possible completions of WORDS",
        };
        Argument<string[]> words = new("WORDS") { Description = $"with {CompletionScripts.Words}: the command line so far, after --, with = before each word", Arity = ArgumentArity.ZeroOrMore };
        var command = new Command("completion", "Print a script that makes a shell complete commands, options, and the names of spots, seats and levels in the house file." + ExitCodes.Of()) { shell, words };
        command.SetAction(parse =>
        {
            string wanted = parse.GetValue(shell)!;
            string[] typed = parse.GetValue(words) ?? [];
            if (wanted == CompletionScripts.Words)
            {
                foreach (string candidate in new CompletionWords((RootCommand)parse.RootCommandResult.Command, invocation).For([.. typed.Select(word => word.StartsWith(CompletionScripts.Before) ? word[1..] : word)]))
                {
                    invocation.Output.WriteLine(candidate);
                }

                return ExitCodes.Done;
            }

            invocation.Output.Write(CompletionScripts.Shells.Contains(wanted)
                ? CompletionScripts.For(wanted).ReplaceLineEndings("\n")
                : throw new CannotBeDoneException($"there is no completion for {Quote.Of(wanted)}; {NearestWord.Advice(wanted, [.. CompletionScripts.Shells])}"));
            return ExitCodes.Done;
        });
        return command;
    }
}
