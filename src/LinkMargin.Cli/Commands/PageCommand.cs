using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using System.Runtime.CompilerServices;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Options;
using LinkMargin.Files.Problems;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Commands;

/// <summary>Shows the house on a page in this machine's browser.</summary>
internal static class PageCommand
{
    private const string PortName = "--port";
    private const int GreatestPort = 65535;

    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Argument<string> file = HouseArgument.Create();
        var port = new Option<int?>(PortName)
        {
            Description = "Port to listen on, on this machine only; default: any free port.",
            HelpName = "PORT",
            CustomParser = ReadPort,
        };
        Option<bool> noBrowser = CommonOptions.Flag("--no-browser", "Print the address; do not open a browser.");
        Option<double?> confidence = ConfidenceOption.Create();
        Option<string[]?> occupied = OccupiedOption.Create();
        Option<string?> fitted = FittedOption.Create();
        var command = new Command(
            "page",
            "Open the house in a browser: drag the console and see every seat, open doors, save what helps. This program serves the page to this machine only; "
                + "end it with Ctrl-C or from the page." + ExitCodes.Of())
        {
            file, port, noBrowser, confidence, occupied, fitted,
        };
        command.SetAction(parse =>
        {
            string typed = parse.GetValue(file)!;
            LoadedHouse loaded = HouseLoading.Read(invocation, LoadedTables.Read(invocation, parse, common), typed, null, parse.GetValue(fitted));
            var order = new PageOrder(
                invocation.Files.ToRead(typed),
                typed,
                loaded,
                [.. OccupiedOption.Read(parse.GetValue(occupied), loaded.House, invocation).Select(seat => seat.Name)],
                ConfidenceOption.Of(parse, confidence),
                parse.GetValue(port) ?? 0,
                !parse.GetValue(noBrowser),
                parse.GetValue(common.Json));
            return Serve(order, invocation);
        });
        return command;
    }

    // A method of its own, so that no other command loads the web server.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Serve(PageOrder order, Invocation invocation) => PageRun.Serve(order, invocation).GetAwaiter().GetResult();

    private static int? ReadPort(ArgumentResult result)
    {
        string word = result.Tokens[0].Value;
        if (int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out int port) && port <= GreatestPort)
        {
            return port;
        }

        result.AddError($"{PortName} {Quote.Of(word)} is not a port; write a number from 1 to {GreatestPort}, or 0 for any free port");
        return null;
    }
}

/// <summary>What page is requested.</summary>
/// <param name="Path">The house file.</param>
/// <param name="Typed">The same, as typed.</param>
/// <param name="Loaded">The house in it, with its tables and fitted losses.</param>
/// <param name="People">Seats with people on them.</param>
/// <param name="Confidence">Share of cases in which the margin to count on is reached, above 0 and below 1.</param>
/// <param name="Port">The port; 0 for a free one.</param>
/// <param name="OpensBrowser">Whether a browser is opened.</param>
/// <param name="AsJson">Whether the address is printed as JSON.</param>
internal sealed record PageOrder(
    string Path, string Typed, LoadedHouse Loaded, IReadOnlyList<string> People, double Confidence, int Port, bool OpensBrowser, bool AsJson);
