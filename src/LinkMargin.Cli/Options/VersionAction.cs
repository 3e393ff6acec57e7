using System.CommandLine;
using System.CommandLine.Invocation;
using LinkMargin.Cli.Invoking;

namespace LinkMargin.Cli.Options;

/// <summary>Prints this program's version, even when run in another process such as a test.</summary>
internal sealed class VersionAction : SynchronousCommandLineAction
{
    /// <inheritdoc/>
    public override bool ClearsParseErrors => true;

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        parseResult.InvocationConfiguration.Output.WriteLine(typeof(VersionAction).Assembly.GetName().Version!.ToString(fieldCount: 3));
        return ExitCodes.Done;
    }
}
