namespace LinkMargin.Cli.Invoking;

/// <summary>One call of the program: where it writes and where relative paths start. Tests use text writers and need no process.</summary>
/// <param name="Output">Where results go.</param>
/// <param name="Error">Where messages go.</param>
/// <param name="Folder">The folder that relative paths start from; empty for the process's own.</param>
internal sealed record Invocation(TextWriter Output, TextWriter Error, string Folder)
{
    /// <summary>Width of output that does not go to a terminal, in characters.</summary>
    public const int PlainWidth = 80;

    /// <summary>Where a person may type; null if nobody can.</summary>
    public TextReader? Input { get; init; }

    /// <summary>The longest line of output, in characters.</summary>
    public int Width { get; init; } = PlainWidth;

    /// <summary>Whether a person sees the messages as they come.</summary>
    public bool ErrorIsTerminal { get; init; }

    /// <summary>Shows long texts; null to write them like all other output.</summary>
    public Pager? Pager { get; init; }

    /// <summary>Cancelled when the program is asked to stop, as by Ctrl-C.</summary>
    public CancellationToken Cancellation { get; init; }

    /// <summary>The files it reads and writes.</summary>
    public RunFiles Files { get; } = new(Folder);
}

/// <summary>What is known of the terminal.</summary>
internal static class Terminal
{
    /// <summary>The least width at which a table is readable, whatever the terminal.</summary>
    public const int LeastWidth = 60;

    /// <summary>The greatest width at which lines are readable.</summary>
    public const int GreatestWidth = 140;

    /// <summary>The width of a line of output.</summary>
    public static int OutputWidth() => WidthIn(Console.IsOutputRedirected ? 0 : Console.WindowWidth);

    /// <summary>The same for a window of this many characters; 0 for a file or a pipe.</summary>
    public static int WidthIn(int window) => window == 0
        ? Invocation.PlainWidth
        : Math.Clamp(window - 1, LeastWidth, GreatestWidth); // many terminals wrap a line that fills them
}
