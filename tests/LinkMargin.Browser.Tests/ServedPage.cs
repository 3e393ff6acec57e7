using Microsoft.Playwright;

namespace LinkMargin.Browser.Tests;

/// <summary>Runs all browser tests one after the other, in one browser.</summary>
[CollectionDefinition(Name)]
public sealed class OneBrowser : ICollectionFixture<BrowserFixture>
{
    public const string Name = "browser";
}

/// <summary>A house that is served, and its page, open and with all maps drawn.</summary>
internal sealed class ServedPage : IAsyncDisposable
{
    private ServedPage(ServedHouse house, OpenPage open) => (House, Open) = (house, open);

    public ServedHouse House { get; }

    public OpenPage Open { get; }

    public IPage Page => Open.Page;

    public int Steps => House.Tried.Current.Steps.Count;

    public static Task<ServedPage> Of(BrowserFixture fixture, int width = 1280) => Of(fixture, ServedHouse.Small, width);

    public static async Task<ServedPage> Of(BrowserFixture fixture, string text, int width = 1280, ColorScheme scheme = ColorScheme.Light, bool hasTouch = false)
    {
        ServedHouse house = await ServedHouse.Of(text);
        try
        {
            OpenPage open = await OpenPage.Of(fixture.Browser, house.Server.NewAddress(), width, scheme: scheme, hasTouch: hasTouch);
            await open.Settled();
            return new ServedPage(house, open);
        }
        catch
        {
            await house.DisposeAsync();
            throw;
        }
    }

    /// <summary>A button by what it says.</summary>
    public ILocator Button(string within, string text) => Page.Locator($"{within} button", new PageLocatorOptions { HasText = text });

    /// <summary>Waits until a step was tried that says this.</summary>
    public Task Tried(string words) => Open.Has("#steps li", words);

    public Task NothingIsTried() => Page.WaitForFunctionAsync("() => document.querySelectorAll('#steps li').length === 0");

    /// <summary>Moves a seat or spot by one press of a key.</summary>
    public async Task Press(string mark, params string[] keys)
    {
        await Page.Locator($".mark[data-key='{mark}']").FocusAsync();
        foreach (string key in keys)
        {
            await Page.Keyboard.PressAsync(key);
        }
    }

    public async ValueTask DisposeAsync()
    {
        await Open.DisposeAsync();
        await House.DisposeAsync();
    }
}
