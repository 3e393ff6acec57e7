using System.Text;
using LinkMargin.Cli;
using LinkMargin.Cli.Invoking;

if (!StandardStreams.HasError)
{
    return ExitCodes.CouldNotBeDone; // and nowhere to say why
}

if (!StandardStreams.HasOutput)
{
    return CommandLineProgram.Refuse(StandardStreams.OpenError(), Terminal.OutputWidth(), "standard output is closed; leave it open or redirect it to a file");
}

if (OperatingSystem.IsWindows() && !Console.IsOutputRedirected)
{
    Console.OutputEncoding = Encoding.UTF8;
}

bool errorIsTerminal = !Console.IsErrorRedirected;
Pager? pager = Pager.OfUser();
using var signals = new StopSignals(errorIsTerminal, () => pager?.IsOpen == true);
int exitCode = CommandLineProgram.Run(args, new Invocation(StandardStreams.OpenOutput(), StandardStreams.OpenError(), Folder: "")
{
    Width = Terminal.OutputWidth(),
    Input = Console.In,
    ErrorIsTerminal = errorIsTerminal,
    Pager = pager,
    Cancellation = signals.Token,
});
signals.End();
return exitCode == ExitCodes.Interrupted ? signals.ExitCode : exitCode;
