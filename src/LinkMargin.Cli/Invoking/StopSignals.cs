using System.Runtime.InteropServices;
using LinkMargin.Files.Writing;

namespace LinkMargin.Cli.Invoking;

/// <summary>
/// Asked to stop by Ctrl-C or SIGTERM, a command ends by itself at its next step. One that does not get there soon, because
/// it computes without a step or waits for another program, is ended from here. In both cases no file is left half written.
/// </summary>
internal sealed class StopSignals : IDisposable
{
    /// <summary>How long a command has to end by itself.</summary>
    internal static readonly TimeSpan Grace = TimeSpan.FromMilliseconds(300);

    /// <summary>How long removing what is half written may take, and then how long saying so: either may hang as the command did.</summary>
    internal static readonly TimeSpan LastStep = TimeSpan.FromMilliseconds(200);

    private const string ShowCursor = "\e[?25h";

    private readonly CancellationTokenSource stop = new();
    private readonly ManualResetEventSlim isOver = new();
    private readonly PosixSignalRegistration pressed, reported;
    private readonly bool errorIsTerminal;
    private readonly Func<bool> isPagerOpen;
    private int signals;

    /// <summary>Listens from now on.</summary>
    /// <param name="errorIsTerminal">Whether a progress bar may be on the screen.</param>
    /// <param name="isPagerOpen">Whether a pager has the terminal, to which Ctrl-C then belongs.</param>
    public StopSignals(bool errorIsTerminal, Func<bool> isPagerOpen)
    {
        this.errorIsTerminal = errorIsTerminal;
        this.isPagerOpen = isPagerOpen;
        pressed = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        reported = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
    }

    /// <summary>Asked to stop.</summary>
    public CancellationToken Token => stop.Token;

    /// <summary>The code a command that was stopped ends with.</summary>
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
            _ = stop.CancelAsync(); // what listens may take its time
            if (isOver.Wait(Grace))
            {
                signal.Cancel = true;
                return;
            }
        }

        // Left to itself, the signal now does what it does to any program.
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
            // Nobody reads it; the program is ending all the same.
        }
    }

    private static void Within(TimeSpan limit, Action action)
    {
        var thread = new Thread(() => action()) { IsBackground = true };
        thread.Start();
        thread.Join(limit);
    }
}
