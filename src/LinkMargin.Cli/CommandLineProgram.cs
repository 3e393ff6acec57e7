using System.CommandLine;
using System.CommandLine.Help;
using LinkMargin.Cli.Commands;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Options;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Writing;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Cli;

/// <summary>The program without its process: arguments in, text out, an exit code back.</summary>
internal static class CommandLineProgram
{
    /// <summary>The message of a command that was stopped.</summary>
    public const string Stopped = "stopped; no file was left half-written";

    private const string Guide = "guide";
    private const string Completion = "completion";

    // By name, in the order of the help.
    private static readonly (string Name, Func<Invocation, CommonOptions, Command> Create)[] Commands =
    [
        ("demo", DemoCommand.Create),
        ("new", NewCommand.Create),
        ("check", CheckCommand.Create),
        ("explain", ExplainCommand.Create),
        ("compare", CompareCommand.Create),
        ("fit", FitCommand.Create),
        ("place", PlaceCommand.Create),
        ("improve", ImproveCommand.Create),
        ("map", MapCommand.Create),
        ("runs", RunsCommand.Create),
        ("report", ReportCommand.Create),
        ("page", PageCommand.Create),
        ("materials", MaterialsCommand.Create),
        (Guide, GuideCommand.Create),
        (Completion, (invocation, _) => CompletionCommand.Create(invocation)),
    ];

    /// <summary>Runs a command.</summary>
    /// <param name="words">The words after the program's name.</param>
    /// <param name="invocation">Where it writes and where relative paths start.</param>
    /// <returns>One of <see cref="ExitCodes"/>.</returns>
    public static int Run(IReadOnlyList<string> words, Invocation invocation)
    {
        try
        {
            int exitCode = Attempt(words, invocation);
            invocation.Output.Flush(); // also after a failure: the first results are worth reading
            return exitCode;
        }
        catch (IOException fault)
        {
            return Refuse(invocation.Error, invocation.Width, $"the results cannot be written: {Quote.Sentence(fault.Message)}");
        }
    }

    private static int Attempt(IReadOnlyList<string> words, Invocation invocation)
    {
        try
        {
            RootCommand root = Create(invocation, words.Count > 0 ? words[0] : null);
            ParseResult parse = root.Parse(
                words, new ParserConfiguration { EnablePosixBundling = false, ResponseFileTokenReplacer = null });
            if (new ParseFaults(parse, words).First() is { } fault)
            {
                throw new CannotBeDoneException(fault);
            }

            return parse.Invoke(new InvocationConfiguration
            {
                Output = invocation.Output,
                Error = invocation.Error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
            });
        }
        catch (FileProblemException problem)
        {
            return Refuse(invocation.Error, invocation.Width, problem.Message);
        }
        catch (CannotBeDoneException reason)
        {
            return Refuse(invocation.Error, invocation.Width, reason.Reasons);
        }
        catch (OperationCanceledException)
        {
            Refuse(invocation.Error, invocation.Width, Stopped);
            return ExitCodes.Interrupted;
        }
        catch (OutOfMemoryException)
        {
            return Refuse(invocation.Error, invocation.Width, "not enough memory; choose a larger --cell, or one --spot and one --level");
        }
        catch (Exception fault) when (fault is not IOException)
        {
            // Last resort for a bug: report it in one sentence, never as a stack trace.
            string sentence = Quote.Sentence(fault.Message);
            return Refuse(invocation.Error, invocation.Width, $"unexpected error: {fault.GetType().Name}: {sentence}; this is a bug in the program, please report it");
        }
    }

    /// <summary>The commands with their options.</summary>
    /// <param name="invocation">Where they write.</param>
    /// <param name="firstWord">
    /// What was typed first: if it is a command that says nothing about the others, only that one is made, to start sooner. Null for all.
    /// </param>
    internal static RootCommand Create(Invocation invocation, string? firstWord = null)
    {
        var common = new CommonOptions();
        var root = new RootCommand(
            "Computes, for every seat and every candidate spot in a house, whether a wireless controller will keep its link to a "
            + "console, with how much margin, and why.\n\n" + ExitCodes.Explained);
        bool isAlone = firstWord is not (Guide or Completion) && Commands.Any(command => command.Name == firstWord);
        foreach ((string name, Func<Invocation, CommonOptions, Command> create) in Commands)
        {
            if (!isAlone || name == firstWord)
            {
                root.Add(create(invocation, common));
            }
        }

        root.Directives.Clear();
        foreach (Option option in common.All)
        {
            option.Recursive = true;
            root.Add(option);
        }

        root.Options.OfType<HelpOption>().Single().Action = new HelpAction { MaxWidth = invocation.Width };
        root.Options.OfType<VersionOption>().Single().Action = new VersionAction();

        return root;
    }

    /// <summary>Reports why something cannot be done.</summary>
    /// <param name="error">Where to write; if writing fails, the exit code must be enough.</param>
    /// <param name="width">Columns to wrap at.</param>
    /// <param name="reasons">One sentence each.</param>
    public static int Refuse(TextWriter error, int width, params IReadOnlyList<string> reasons)
    {
        try
        {
            foreach (string reason in reasons)
            {
                WordWrap.WriteMessage(Quote.Line($"linkmargin: {reason}"), error, width);
            }
        }
        catch (IOException)
        {
            // Standard error is full, or nobody reads it anymore.
        }

        return ExitCodes.CouldNotBeDone;
    }
}
