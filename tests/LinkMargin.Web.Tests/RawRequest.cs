using System.Net.Sockets;
using System.Text;

namespace LinkMargin.Web.Tests;

/// <summary>A request written letter by letter, as an attacker may: no library puts anything right.</summary>
internal static class RawRequest
{
    /// <summary>Sends it and gives the whole answer.</summary>
    public static async Task<string> Send(int port, string firstLine, params string[] headers) => await Send(port, firstLine, headers, "");

    public static async Task<string> Send(int port, string firstLine, string[] headers, string body)
    {
        using var client = new TcpClient();
        await client.ConnectAsync("127.0.0.1", port);
        await using NetworkStream stream = client.GetStream();
        string text = $"{firstLine} HTTP/1.1\r\n{string.Concat(headers.Select(header => header + "\r\n"))}Connection: close\r\nContent-Length: {Encoding.UTF8.GetByteCount(body)}\r\n\r\n{body}";
        await stream.WriteAsync(Encoding.UTF8.GetBytes(text));
        using var reader = new StreamReader(stream, Encoding.UTF8);
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        return await reader.ReadToEndAsync(patience.Token);
    }

    public static int StatusOf(string answer) => int.Parse(answer.Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture);
}
