using System.Globalization;

namespace LinkMargin.Cli.Invoking;

/// <summary>Shows progress when a person is watching and the work takes more than a moment.</summary>
internal static class ProgressBar
{
    private const int BarLetters = 40;

    private static readonly TimeSpan Moment = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(100);

    /// <summary>Does the work and shows its progress.</summary>
    /// <param name="invocation">Where messages go.</param>
    /// <param name="what">What is being done.</param>
    /// <param name="progress">How much is done.</param>
    /// <param name="work">The work.</param>
    public static void While(Invocation invocation, string what, Progress progress, Action work)
    {
        if (!invocation.ErrorIsTerminal)
        {
            work();
            return;
        }

        Task task = Task.Run(work);
        if (!IsOver(task, Moment))
        {
            Show(invocation.Error, what, progress, task);
        }

        task.GetAwaiter().GetResult();
    }

    // One line, overwritten each time and cleared at the end.
    private static void Show(TextWriter error, string what, Progress progress, Task task)
    {
        string last = "";
        do
        {
            int filled = (int)Math.Round(BarLetters * progress.Share);
            string line = string.Create(
                CultureInfo.InvariantCulture, $"{what} [{new string('#', filled)}{new string('.', BarLetters - filled)}] {100 * progress.Share,3:0} %");
            if (line != last)
            {
                error.Write($"\r{line}");
                error.Flush();
                last = line;
            }
        }
        while (!IsOver(task, BetweenLooks));
        error.Write($"\r{new string(' ', last.Length)}\r");
        error.Flush();
    }

    // Waits without throwing an error of the work; the caller throws it once.
    private static bool IsOver(Task task, TimeSpan wait) => Task.WhenAny(task, Task.Delay(wait)).GetAwaiter().GetResult() == task;
}

/// <summary>How much of some work is done; can be advanced from any thread.</summary>
/// <param name="total">All of it, above 0.</param>
internal sealed class Progress(long total)
{
    private long done;

    /// <summary>The share done, 0 to 1.</summary>
    public double Share => Math.Clamp((double)Interlocked.Read(ref done) / total, 0, 1);

    /// <summary>Records more work done.</summary>
    public void Advance(long more = 1) => Interlocked.Add(ref done, more);

    /// <summary>Records the total done so far.</summary>
    public void Reach(long so) => Interlocked.Exchange(ref done, so);
}
