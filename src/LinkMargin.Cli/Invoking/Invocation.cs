namespace LinkMargin.Cli.Invoking;

/// <summary>One call of the program: where it writes and where it stands. A test puts text writers here and needs no process.</summary>
/// <param name="Output">Where results go.</param>
/// <param name="Error">Where messages go.</param>
/// <param name="Folder">The folder that relative paths start from; empty for the process's own.</param>
internal sealed record Invocation(TextWriter Output, TextWriter Error, string Folder)
{
    /// <summary>Width of what is not written to a terminal, in characters.</summary>
    public const int PlainWidth = 80;

    /// <summary>Where a person may answer; null where nobody does.</summary>
    public TextReader? Input { get; init; }

    /// <summary>How many characters a line of the output should have at most.</summary>
    public int Width { get; init; } = PlainWidth;

    /// <summary>Whether a person reads the messages as they come.</summary>
    public bool ErrorIsTerminal { get; init; }

    /// <summary>What long texts are read with; null where they are written like all else.</summary>
    public Pager? Pager { get; init; }

    /// <summary>Asked to stop, as by Ctrl-C.</summary>
    public CancellationToken Cancellation { get; init; }

    /// <summary>The files it reads and writes.</summary>
    public RunFiles Files { get; } = new(Folder);
}

/// <summary>What is known of the terminal.</summary>
internal static class Terminal
{
    /// <summary>Narrower than this no table can be read, whatever the terminal.</summary>
    public const int LeastWidth = 60;

    /// <summary>Wider than this lines are too long to read.</summary>
    public const int GreatestWidth = 140;

    /// <summary>How wide a line of the output may be.</summary>
    public static int OutputWidth() => WidthIn(Console.IsOutputRedirected ? 0 : Console.WindowWidth);

    /// <summary>The same for a window of so many characters; 0 if there is none, as in a file or a pipe.</summary>
    public static int WidthIn(int window) => window == 0
        ? Invocation.PlainWidth
        : Math.Clamp(window - 1, LeastWidth, GreatestWidth); // many terminals wrap a line that fills them
}
