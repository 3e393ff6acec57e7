namespace LinkMargin.Cli;

/// <summary>What is known of the terminal.</summary>
internal static class Terminal
{
    // Below this tables fall apart, above it lines are too long to read.
    private const int LeastWidth = 60;
    private const int GreatestWidth = 140;

    /// <summary>How wide the output may be: the window's width, or a fixed one where there is no window.</summary>
    public static int OutputWidth() => Console.IsOutputRedirected || Console.WindowWidth == 0
        ? Invocation.PlainWidth
        : Math.Clamp(Console.WindowWidth - 1, LeastWidth, GreatestWidth);
}
