using System.Collections.Concurrent;
using Microsoft.Playwright;

namespace LinkMargin.Browser.Tests;

/// <summary>One browser for all tests.</summary>
public sealed class BrowserFixture : IAsyncLifetime
{
    private IPlaywright? playwright;

    public IBrowser Browser { get; private set; } = null!;

    public async Task InitializeAsync()
    {
        if (Chromium.Path is null && !Chromium.IsRequired)
        {
            return;
        }

        playwright = await Playwright.CreateAsync();
        Browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Chromium.Path ?? throw new InvalidOperationException($"{Chromium.RequiredVariable} is set, and no Chromium was found."),
            Args = ["--no-sandbox", "--disable-gpu"],
        });
    }

    public async Task DisposeAsync()
    {
        if (playwright is not null)
        {
            await Browser.CloseAsync();
            playwright.Dispose();
        }
    }
}

/// <summary>A page in a browser context of its own, with everything the browser said about it.</summary>
internal sealed class OpenPage : IAsyncDisposable
{
    // Machines that build are slow and busy.
    private const float PatienceMs = 60_000, SettlingMs = 40_000;

    private readonly IBrowserContext context;

    private OpenPage(IBrowserContext context, IPage page) => (this.context, Page) = (context, page);

    public IPage Page { get; }

    public ConcurrentQueue<string> Said { get; } = [];

    public ConcurrentQueue<string> Asked { get; } = [];

    public static async Task<OpenPage> Of(IBrowser browser, string address, int width = 1280, int height = 800, ColorScheme scheme = ColorScheme.Light, bool hasTouch = false)
    {
        IBrowserContext context = await browser.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = height },
            ColorScheme = scheme,
            AcceptDownloads = true,
            HasTouch = hasTouch,
        });
        context.SetDefaultTimeout(PatienceMs);
        var open = new OpenPage(context, await context.NewPageAsync());
        await open.GoTo(address);
        return open;
    }

    /// <summary>Another page of the same browser, which is admitted already.</summary>
    public async Task<OpenPage> Another(string address)
    {
        var open = new OpenPage(context, await context.NewPageAsync());
        await open.GoTo(address);
        return open;
    }

    /// <summary>Waits until the seats have figures and every level its fine map.</summary>
    public async Task Settled()
    {
        await Page.Locator("#seats .verdict").First.WaitForAsync();
        try
        {
            await AllFine(SettlingMs);
        }
        catch (TimeoutException)
        {
            // One page in a thousand waited for a fine map for ever. Two ways to lose one are mended; whether there is another is not known. So it is
            // loaded again once, and what it showed is printed.
            Console.WriteLine($"No fine map after {SettlingMs / 1000} s, loaded again: {await State()}");
            await Page.ReloadAsync();
            await AllFine(PatienceMs);
        }
    }

    public Task Has(string selector, string text) => Page.Locator(selector).Filter(new LocatorFilterOptions { HasText = text }).First.WaitForAsync();

    /// <summary>The figure of a seat in the list.</summary>
    public async Task<string> FigureOf(string seat)
    {
        string cell = await Page.Locator($"#seats tr:has(th:has-text(\"{seat}\")) .verdict").InnerTextAsync();
        return cell.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries)[1];
    }

    /// <summary>Waits until a seat's figure is, or is not, the one given.</summary>
    public async Task FigureBecomes(string seat, string figure, bool isThat = true)
    {
        if (!await Becomes(async () => await FigureOf(seat) == figure == isThat))
        {
            Assert.Fail($"{seat} is {await FigureOf(seat)}; expected {(isThat ? "" : "anything but ")}{figure}");
        }
    }

    /// <summary>Waits until the map of a level is another: it is painted some time after the figures.</summary>
    public async Task MapChanges(int level, byte[] before) =>
        Assert.True(await Becomes(async () => !(await MapOf(level)).SequenceEqual(before)), "The map stays the same.");

    public async Task<(float X, float Y)> MiddleOf(string selector)
    {
        LocatorBoundingBoxResult box = (await Page.Locator(selector).First.BoundingBoxAsync())!;
        return (box.X + (box.Width / 2), box.Y + (box.Height / 2));
    }

    public async Task Drag(string selector, float dx, float dy, bool drops = true)
    {
        (float x, float y) = await MiddleOf(selector);
        await Page.Mouse.MoveAsync(x, y);
        await Page.Mouse.DownAsync();
        await Page.Mouse.MoveAsync(x + (dx / 2), y + (dy / 2), new MouseMoveOptions { Steps = 4 });
        await Page.Mouse.MoveAsync(x + dx, y + dy, new MouseMoveOptions { Steps = 4 });
        if (drops)
        {
            await Page.Mouse.UpAsync();
        }
    }

    /// <summary>The map of a level as it is painted.</summary>
    public async Task<byte[]> MapOf(int level) =>
        Convert.FromBase64String((await Page.Locator($".level[data-level='{level}'] canvas").EvaluateAsync<string>("canvas => canvas.toDataURL()")).Split(',')[1]);

    public ValueTask DisposeAsync() => new(context.CloseAsync());

    private Task<IJSHandle> AllFine(float patienceMs) => Page.WaitForFunctionAsync(
        "() => document.querySelectorAll('.level').length > 0 && [...document.querySelectorAll('.level')].every(level => level.dataset.fine === 'true')",
        null,
        new PageWaitForFunctionOptions { Timeout = patienceMs });

    private async Task<string> State() => await Page.EvaluateAsync<string>(
        "async () => { const { store } = await import(new URL('store.js', document.querySelector('script[type=module]').src)); return JSON.stringify({ fine: [...document.querySelectorAll('.level')].map(level => level.dataset.fine), fields: store.fields.map(field => [field?.generation, field?.isFine]), spot: store.spot, unpainted: store.unpainted, connected: store.connected, visible: document.visibilityState }); }")
        + " " + string.Join("; ", Said);

    private async Task<bool> Becomes(Func<Task<bool>> isSo)
    {
        const int Looks = 600, ApartMs = 100;
        for (int i = 0; i < Looks; i++)
        {
            if (await isSo())
            {
                return true;
            }

            await Page.WaitForTimeoutAsync(ApartMs);
        }

        return false;
    }

    private async Task GoTo(string address)
    {
        Page.Console += (_, message) => Said.Enqueue($"{message.Type}: {message.Text} ({message.Location})");
        Page.PageError += (_, fault) => Said.Enqueue(fault);
        Page.Request += (_, request) => Asked.Enqueue(request.Url);
        await Page.GotoAsync(address);
    }
}
