namespace LinkMargin.Cli.Invoking;

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
