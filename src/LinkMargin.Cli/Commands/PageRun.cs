using LinkMargin.Cli.Invoking;
using LinkMargin.Files.Journals;
using LinkMargin.Files.Json;
using LinkMargin.Reports.Layout;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Serving;

namespace LinkMargin.Cli.Commands;

/// <summary>Serves a page until the user ends it.</summary>
internal static class PageRun
{
    /// <summary>Serves it.</summary>
    public static async Task<int> Serve(PageOrder order, Invocation invocation)
    {
        var source = new HouseSource(Path.GetFullPath(order.Path), order.Typed, order.Loaded.Tables, order.Loaded.Fitted);
        TriedHouse tried = TriedHouse.Open(source, StateFolder.OfUser(), order.People);
        PageServer server;
        try
        {
            server = await PageServer.Start(tried, order.Confidence, order.Port);
        }
        catch
        {
            tried.Dispose();
            throw;
        }

        await using (server)
        {
            if (order.AsJson)
            {
                invocation.Output.WriteLine(JsonText.Of(new PageDocument(order.Loaded.House.Name, server.NewAddress(), server.Port)));
            }
            else
            {
                Tell($"{order.Loaded.House.Name} is at this address, on this machine only; the address works once:");
                TellAddress(server.NewAddress());
                Tell("Press Enter for a new address. End with Ctrl-C or from the page.");
            }

            invocation.Output.Flush();
            if (order.OpensBrowser && !Browser.Open(server.NewAddress()))
            {
                WordWrap.WriteMessage("no browser could be started; open the address in a browser", invocation.Error, invocation.Width);
            }

            // Each line on standard input asks for a new address; at its end the loop stops.
            using var reading = new CancellationTokenSource();
            _ = Task.Run(() => GiveAddresses(server, reading.Token), CancellationToken.None);
            Task stopped = Task.Delay(Timeout.Infinite, invocation.Cancellation);
            await Task.WhenAny(server.Ended, stopped);
            await reading.CancelAsync();
        }

        invocation.Cancellation.ThrowIfCancellationRequested();
        return ExitCodes.Done;

        void Tell(string text) => WordWrap.Write(text, invocation.Output, invocation.Width);

        // On its own line and never wrapped, so that it can be clicked or copied.
        void TellAddress(string address) => invocation.Output.WriteLine(address);

        void GiveAddresses(PageServer running, CancellationToken cancellation)
        {
            while (invocation.Input?.ReadLine() is not null && !cancellation.IsCancellationRequested)
            {
                TellAddress(running.NewAddress());
                invocation.Output.Flush();
            }
        }
    }
}
