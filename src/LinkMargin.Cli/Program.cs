using System.Text;
using LinkMargin.Cli;

// Asked to stop, the command ends at its next step and leaves nothing half written.
using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, press) =>
{
    press.Cancel = !stop.IsCancellationRequested; // a second Ctrl-C does not wait
    stop.Cancel();
};

// Written in blocks and in UTF-8 whatever the terminal's code page: names are shown as people wrote them.
var output = new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(false));
return CommandLineProgram.Run(args, new Invocation(output, Console.Error, Folder: "")
{
    Width = Terminal.OutputWidth(),
    ErrorIsTerminal = !Console.IsErrorRedirected,
    Cancellation = stop.Token,
});
