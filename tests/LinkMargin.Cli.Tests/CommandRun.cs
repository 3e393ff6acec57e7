using System.Text.Json;
using LinkMargin.Cli.Invoking;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Cli.Tests;

/// <summary>What one run of the program gave.</summary>
/// <param name="ExitCode">Its exit code.</param>
/// <param name="Output">What stood on standard output.</param>
/// <param name="Error">What stood on standard error, each message on one line, so that a test does not depend on where lines break.</param>
internal sealed record CommandRun(int ExitCode, string Output, string Error)
{
    /// <summary>What stood on standard error, line by line.</summary>
    public string ErrorAsWritten { get; private init; } = Error;

    /// <summary>Standard output as the one JSON document it is.</summary>
    public JsonElement Json => JsonDocument.Parse(Output).RootElement;

    /// <summary>Standard output on one line, so that a test does not depend on where lines break.</summary>
    public string OutputUnwrapped => string.Join(' ', Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>The same of what it says on standard error.</summary>
    public string ErrorUnwrapped => string.Join(' ', Error.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>Runs the program through its real parser, in this process.</summary>
    public static CommandRun Of(params string[] words) => In(Environment.CurrentDirectory, words);

    /// <summary>The same, as if started in a folder.</summary>
    public static CommandRun In(string folder, params string[] words) => In(folder, Invocation.PlainWidth, words);

    /// <summary>The same on a terminal so wide.</summary>
    public static CommandRun In(string folder, int width, params string[] words)
    {
        StringWriter output = new() { NewLine = "\n" }, error = new() { NewLine = "\n" };
        int exitCode = CommandLineProgram.Run(words, new Invocation(output, error, folder) { Width = width });
        return new CommandRun(exitCode, output.ToString(), OneLineEach(error.ToString())) { ErrorAsWritten = error.ToString() };
    }

    /// <summary>The words of a line as a shell would part them, with names in single quotes.</summary>
    public static string[] WordsOf(string line) =>
        [.. line.Split('\'').SelectMany((part, i) => i % 2 == 1 ? [part] : part.Split(' ', StringSplitOptions.RemoveEmptyEntries))];

    /// <summary>Messages as they would stand if lines had no end.</summary>
    public static string OneLineEach(string messages) =>
        messages.Replace("\n" + WordWrap.MessageIndent, " ", StringComparison.Ordinal);
}
