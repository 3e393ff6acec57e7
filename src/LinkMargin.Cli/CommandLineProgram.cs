using System.CommandLine;
using System.CommandLine.Help;
using LinkMargin.Cli.Commands;
using LinkMargin.Cli.Options;
using LinkMargin.Files.Writing;

namespace LinkMargin.Cli;

/// <summary>The whole program but its process: words in, text out, an exit code back.</summary>
internal static class CommandLineProgram
{
    /// <summary>Runs a command.</summary>
    /// <param name="words">What was typed behind the program's name.</param>
    /// <param name="invocation">Where it writes and where it stands.</param>
    /// <returns>One of <see cref="ExitCodes"/>.</returns>
    public static int Run(IReadOnlyList<string> words, Invocation invocation)
    {
        try
        {
            RootCommand root = Create(invocation);
            ParseResult parse = root.Parse(
                words, new ParserConfiguration { EnablePosixBundling = false, ResponseFileTokenReplacer = null });
            if (new ParseFaults(parse, words).First() is { } fault)
            {
                throw new CannotBeDoneException(fault);
            }

            int exitCode = parse.Invoke(new InvocationConfiguration
            {
                Output = invocation.Output,
                Error = invocation.Error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
            });
            invocation.Output.Flush();
            return exitCode;
        }
        catch (FileProblemException problem)
        {
            return Refuse(invocation, problem.Message);
        }
        catch (IOException fault)
        {
            return Refuse(invocation, $"the results cannot be written: {fault.Message.ReplaceLineEndings(" ")}");
        }
        catch (CannotBeDoneException reason)
        {
            return Refuse(invocation, reason.Reasons);
        }
        catch (OperationCanceledException)
        {
            return Refuse(invocation, "stopped; every file that was begun is as it was before");
        }
        catch (OutOfMemoryException)
        {
            return Refuse(invocation, "there is not enough memory for this; choose a larger --cell, or one --spot and one --level");
        }
        catch (Exception fault)
        {
            // The last line between a fault of ours and a person: what it was in one sentence, never a stack.
            string sentence = fault.Message.ReplaceLineEndings(" ");
            return Refuse(invocation, $"unexpected: {fault.GetType().Name}: {sentence}; this is a fault of the program, please report it");
        }
    }

    private static RootCommand Create(Invocation invocation)
    {
        var common = new CommonOptions();
        var root = new RootCommand(
            "Tells, for every seat and every candidate spot in a house, whether a wireless controller will hold its link to a "
            + "console, by how much and why.\n\n" + ExitCodes.Explained)
        {
            DemoCommand.Create(invocation, common),
            NewCommand.Create(invocation, common),
            CheckCommand.Create(invocation, common),
            ExplainCommand.Create(invocation, common),
            CompareCommand.Create(invocation, common),
            FitCommand.Create(invocation, common),
            PlaceCommand.Create(invocation, common),
            ImproveCommand.Create(invocation, common),
            MapCommand.Create(invocation, common),
            MaterialsCommand.Create(invocation, common),
        };
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

    private static int Refuse(Invocation invocation, params IReadOnlyList<string> reasons)
    {
        foreach (string reason in reasons)
        {
            invocation.Error.WriteLine($"linkmargin: {reason}");
        }

        return ExitCodes.CouldNotBeDone;
    }
}
