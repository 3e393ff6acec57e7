using LinkMargin.Cli.Invoking;
using Spectre.Console;

namespace LinkMargin.Cli.Output;

/// <summary>Shows how far some work is, where a person is watching and it takes more than a moment.</summary>
internal static class ProgressBar
{
    private static readonly TimeSpan Moment = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(100);

    /// <summary>Does the work, and shows how far it is.</summary>
    /// <param name="invocation">Where the talk goes.</param>
    /// <param name="what">What is being done.</param>
    /// <param name="progress">How far it is.</param>
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

    // Apart from its caller, so that the library for terminals is only loaded where a bar is shown.
    private static void Show(TextWriter error, string what, Progress progress, Task task)
    {
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(error) });
        console.Progress().AutoClear(true).Start(context =>
        {
            ProgressTask bar = context.AddTask(what.EscapeMarkup(), maxValue: 1);
            while (!IsOver(task, BetweenLooks))
            {
                bar.Value = progress.Share;
            }
        });
    }

    // Waits without throwing what the work threw; the caller does that once.
    private static bool IsOver(Task task, TimeSpan wait) => Task.WhenAny(task, Task.Delay(wait)).GetAwaiter().GetResult() == task;
}
