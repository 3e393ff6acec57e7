using System.Net.WebSockets;
using System.Threading.Channels;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Live;

/// <summary>The connection to one page: sends messages in order from any thread, and receives requests.</summary>
/// <param name="socket">The connection.</param>
internal sealed class PageSocket(WebSocket socket)
{
    // A request is a few hundred bytes.
    private const int MostRequestBytes = 64 * 1024;

    private static readonly TimeSpan CloseTime = TimeSpan.FromSeconds(1);

    private readonly Channel<(byte[] Bytes, WebSocketMessageType Type)> outbox = Channel.CreateUnbounded<(byte[], WebSocketMessageType)>();

    /// <summary>Sends a message.</summary>
    public void Send(Message message) => outbox.Writer.TryWrite((PageJson.Bytes(message), WebSocketMessageType.Text));

    /// <summary>Sends bytes.</summary>
    public void Send(byte[] bytes) => outbox.Writer.TryWrite((bytes, WebSocketMessageType.Binary));

    /// <summary>Serves the connection alongside other work until one of them ends or the page is gone; then ends both.</summary>
    /// <param name="take">Handles a request.</param>
    /// <param name="work">The other work.</param>
    /// <param name="ended">Cancelled to end everything.</param>
    public async Task Run(Action<byte[], int> take, Func<CancellationToken, Task> work, CancellationTokenSource ended)
    {
        Task[] loops = [Receive(take, ended.Token), Task.Run(() => work(ended.Token), CancellationToken.None), Write(ended.Token)];
        try
        {
            await Finished(await Task.WhenAny(loops));
        }
        finally
        {
            await ended.CancelAsync();
            await Close();
            await Task.WhenAll(loops.Select(Finished));
        }
    }

    private static async Task Finished(Task loop)
    {
        try
        {
            await loop;
        }
        catch (Exception fault) when (fault is OperationCanceledException or WebSocketException or IOException)
        {
            // The page is gone, or everything is ending.
        }
    }

    private async Task Write(CancellationToken cancellation)
    {
        await foreach ((byte[] bytes, WebSocketMessageType type) in outbox.Reader.ReadAllAsync(cancellation))
        {
            await socket.SendAsync(bytes, type, endOfMessage: true, cancellation);
        }
    }

    private async Task Receive(Action<byte[], int> take, CancellationToken cancellation)
    {
        byte[] buffer = new byte[MostRequestBytes];
        while (true)
        {
            int count = 0;
            ValueWebSocketReceiveResult part;
            do
            {
                if (count == buffer.Length)
                {
                    throw new WebSocketException("A request is larger than any page sends.");
                }

                part = await socket.ReceiveAsync(buffer.AsMemory(count), cancellation);
                count += part.Count;
            }
            while (!part.EndOfMessage);

            if (part.MessageType == WebSocketMessageType.Close)
            {
                return;
            }

            take(buffer, count);
        }
    }

    private async Task Close()
    {
        if (socket.State is not (WebSocketState.Open or WebSocketState.CloseReceived))
        {
            return;
        }

        using var soon = new CancellationTokenSource(CloseTime);
        try
        {
            await socket.CloseOutputAsync(WebSocketCloseStatus.EndpointUnavailable, "the server ends", soon.Token);
        }
        catch (Exception fault) when (fault is OperationCanceledException or WebSocketException or IOException)
        {
            // The browser closed it first.
        }
    }
}
