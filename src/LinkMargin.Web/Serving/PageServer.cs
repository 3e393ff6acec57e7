using System.Net;
using System.Net.Sockets;
using LinkMargin.Files.Writing;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Live;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace LinkMargin.Web.Serving;

/// <summary>Serves the page of one house, only to this machine.</summary>
internal sealed class PageServer : IAsyncDisposable
{
    // Above what the page ever needs.
    private const long MostRequestBytes = 256 * 1024;
    private const long MostConnections = 64;

    private static readonly TimeSpan StopTime = TimeSpan.FromSeconds(2);

    private readonly WebApplication app;
    private readonly CancellationTokenSource stopping = new();
    private readonly FileWatch watch;
    private readonly TaskCompletionSource ended = new(TaskCreationOptions.RunContinuationsAsynchronously);

    private PageServer(WebApplication app, Admission admission, PageServices services)
    {
        (this.app, Admission, Services) = (app, admission, services);
        watch = new FileWatch(services.Tried);
    }

    /// <summary>Who may use it.</summary>
    public Admission Admission { get; }

    /// <summary>Services shared by its pages.</summary>
    public PageServices Services { get; }

    /// <summary>The port it listens on.</summary>
    public int Port { get; private set; }

    /// <summary>Ends when a page asks the program to end.</summary>
    public Task Ended => ended.Task;

    /// <summary>Its address without a token.</summary>
    public string Origin => Guard.OriginOf(Port);

    /// <summary>Starts the server.</summary>
    /// <param name="tried">The house; the server disposes of it.</param>
    /// <param name="confidence">Share of cases in which the margin to count on is reached, above 0 and below 1.</param>
    /// <param name="port">The port; 0 for any free one.</param>
    /// <param name="services">Services shared by pages; null for the default.</param>
    /// <exception cref="FileProblemException">The port is not available.</exception>
    public static async Task<PageServer> Start(TriedHouse tried, double confidence, int port, PageServices? services = null)
    {
        // The empty builder reads neither a settings file in the current folder nor environment variables: either could expose the page
        // to the network.
        WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseKestrelCore();
        builder.Services.AddRoutingCore();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = MostRequestBytes;
            kestrel.Limits.MaxConcurrentConnections = MostConnections;
            kestrel.Listen(IPAddress.Loopback, port);
        });
        WebApplication app = builder.Build();
        var server = new PageServer(app, new Admission(), services ?? new PageServices(tried, confidence));
        Guard? guard = null;
        app.Use((HttpContext context, RequestDelegate next) =>
        {
            guard ??= new Guard(server.Admission, server.Port = PortOf(app));
            return guard.Pass(context, next);
        });
        app.UseWebSockets();
        new Routes(server.Services, () => server.ended.TrySetResult(), server.stopping.Token).AddTo(app);
        try
        {
            await app.StartAsync();
        }
        catch (Exception fault) when (fault is IOException or SocketException)
        {
            await app.DisposeAsync();
            throw new FileProblemException(FormattableString.Invariant($"port {port}"), "another program uses it; choose another --port, or omit --port for any free one", fault);
        }

        server.Port = PortOf(app);
        return server;
    }

    /// <summary>An address that admits one browser, once.</summary>
    public string NewAddress() => $"{Origin}/?{Guard.TokenKey}={Admission.NewToken()}";

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        // Pages first, because an open socket would delay the server's stop.
        await stopping.CancelAsync();
        watch.Dispose();
        Services.Jobs.Dispose();
        using (var soon = new CancellationTokenSource(StopTime))
        {
            try
            {
                await app.StopAsync(soon.Token);
            }
            catch (OperationCanceledException)
            {
                // A client keeps a connection open; it ends with the program.
            }
        }

        await app.DisposeAsync();
        Services.Tried.Dispose();
        stopping.Dispose();
    }

    private static int PortOf(WebApplication app)
    {
        string address = ((IApplicationBuilder)app).ServerFeatures.Get<IServerAddressesFeature>()!.Addresses.Single();
        return new Uri(address).Port;
    }
}
