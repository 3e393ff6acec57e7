using System.Runtime.InteropServices;
using System.Text;
using LinkMargin.Cli;

// Asked to stop, the command ends at its next step and leaves nothing half written.
using var stop = new CancellationTokenSource();
using PosixSignalRegistration pressed = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
using PosixSignalRegistration told = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
if (OperatingSystem.IsWindows() && !Console.IsOutputRedirected)
{
    Console.OutputEncoding = Encoding.UTF8;
}

// Written in blocks and in UTF-8: names are shown as people wrote them.
var output = new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(false));
return CommandLineProgram.Run(args, new Invocation(output, Console.Error, Folder: "")
{
    Width = Terminal.OutputWidth(),
    ErrorIsTerminal = !Console.IsErrorRedirected,
    Cancellation = stop.Token,
});

void Stop(PosixSignalContext signal)
{
    signal.Cancel = !stop.IsCancellationRequested; // asked a second time, it does not wait
    stop.Cancel();
}
