using System.Runtime.InteropServices;
using LinkMargin.Files.Writing;

namespace LinkMargin.Cli.Invoking;

/// <summary>
/// After Ctrl-C or SIGTERM a command ends by itself at its next step. If that takes too long, because it computes without
/// steps or waits for another program, it is ended from here. In both cases no file is left half written.
/// </summary>
internal sealed class StopSignals : IDisposable
{
    /// <summary>How long a command has to end by itself.</summary>
    internal static readonly TimeSpan Grace = TimeSpan.FromMilliseconds(300);

    /// <summary>
    /// Time limit for removing half-written files, and then for the message. Each takes milliseconds, but either may hang as the command did,
    /// and a machine with much else to do may be slow to start a thread for it.
    /// </summary>
    internal static readonly TimeSpan LastStep = TimeSpan.FromSeconds(2);

    private const string ShowCursor = "\e[?25h";

    private readonly CancellationTokenSource stop = new();
    private readonly ManualResetEventSlim isOver = new();
    private readonly PosixSignalRegistration pressed, reported;
    private readonly bool errorIsTerminal;
    private readonly Func<bool> isPagerOpen;
    private int signals;

    /// <summary>Starts to listen.</summary>
    /// <param name="errorIsTerminal">Whether a progress bar may be on the screen.</param>
    /// <param name="isPagerOpen">Whether a pager has the terminal; Ctrl-C is then for the pager.</param>
    public StopSignals(bool errorIsTerminal, Func<bool> isPagerOpen)
    {
        this.errorIsTerminal = errorIsTerminal;
        this.isPagerOpen = isPagerOpen;
        pressed = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        reported = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
    }

    /// <summary>Cancelled when a signal comes.</summary>
    public CancellationToken Token => stop.Token;

    /// <summary>The exit code of a command that was stopped.</summary>
    public int ExitCode { get; private set; } = ExitCodes.Interrupted;

    /// <summary>Reports that the command is over, so that its own exit code stands.</summary>
    public void End() => isOver.Set();

    /// <inheritdoc/>
    public void Dispose()
    {
        pressed.Dispose();
        reported.Dispose();
        isOver.Dispose();
        stop.Dispose();
    }

    private void Stop(PosixSignalContext signal)
    {
        if (signal.Signal == PosixSignal.SIGINT && isPagerOpen())
        {
            signal.Cancel = true;
            return;
        }

        if (Interlocked.Increment(ref signals) == 1)
        {
            ExitCode = signal.Signal == PosixSignal.SIGTERM ? ExitCodes.Terminated : ExitCodes.Interrupted;
            _ = stop.CancelAsync(); // its callbacks may take long
            if (isOver.Wait(Grace))
            {
                signal.Cancel = true;
                return;
            }
        }

        // The signal is not cancelled, so after this it ends the process as usual.
        Within(LastStep, WholeFile.Abandon);
        Within(LastStep, Say);
    }

    private void Say()
    {
        try
        {
            using TextWriter error = StandardStreams.OpenError();
            error.WriteLine($"{(errorIsTerminal ? ShowCursor : "")}linkmargin: {CommandLineProgram.Stopped}");
        }
        catch (IOException)
        {
            // Nobody reads it; the program ends anyway.
        }
    }

    private static void Within(TimeSpan limit, Action action)
    {
        var thread = new Thread(() => action()) { IsBackground = true };
        thread.Start();
        thread.Join(limit);
    }
}
