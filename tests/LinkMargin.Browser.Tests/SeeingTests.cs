using LinkMargin.Files.Resources;
using LinkMargin.Web.Protocol;
using Microsoft.Playwright;

namespace LinkMargin.Browser.Tests;

/// <summary>What a person sees on the page.</summary>
[Collection(OneBrowser.Name)]
public sealed class SeeingTests(BrowserFixture fixture)
{
    [BrowserFact]
    public async Task It_opens_without_a_word_in_the_console_and_asks_nobody_else()
    {
        await using ServedPage page = await ServedPage.Of(fixture, DemoHouse.Text);
        await page.Open.Has("#finding", "Larder shelf, the best of 4 spots: 5 of 7 seats pass. Probability of being the best spot:");
        Assert.Empty(page.Open.Said);
        Assert.All(page.Open.Asked, url => Assert.StartsWith(page.House.Server.Origin, url, StringComparison.Ordinal));
        Assert.DoesNotContain("token", page.Page.Url, StringComparison.Ordinal);
        Assert.Contains("spot=larder+shelf", page.Page.Url, StringComparison.Ordinal);
        Assert.True(await page.Page.EvaluateAsync<bool>("() => document.fonts.check('16px \"LinkMargin Lettering\"')"));

        // The figures of the list are those of the engine, as 'compare' prints them.
        SpotFigures shown = (await page.House.Server.Services.Comparisons.Of(page.House.Tried.Current)).Message.Spots[0];
        foreach (SeatFigure figure in shown.Seats)
        {
            Assert.Equal(figure.CountOn, await page.Open.FigureOf(figure.Seat));
        }
    }

    [BrowserFact]
    public async Task Each_spot_has_its_cost_in_cable()
    {
        await using ServedPage page = await ServedPage.Of(fixture, DemoHouse.Text);
        CablesMessage cables = await page.House.Server.Services.Cables.Of(page.House.Tried.Current);
        Assert.Equal(4, cables.Spots.Count);
        await page.Open.Has("#spots tr", "new cable runs");
        foreach (SpotCables spot in cables.Spots)
        {
            await page.Open.Has("#spots tr", spot.ToBuy);
        }

        await page.Button("#spots", "den rack").ClickAsync();
        await page.Open.Has("#chosen", cables.Spots.Single(spot => spot.Spot == "den rack").Words);
    }

    [BrowserFact]
    public async Task The_margin_is_read_anywhere_by_pointing_by_a_tap_and_by_keys()
    {
        await using ServedPage page = await ServedPage.Of(fixture, ServedHouse.Small, hasTouch: true);
        (float x, float y) = await page.Open.MiddleOf(".level canvas");
        await page.Page.Mouse.MoveAsync(x - 60, y + 60);
        await page.Open.Has("#hover", "dB to count on, median");
        await page.Page.Mouse.MoveAsync(2, 2);
        await page.Page.WaitForFunctionAsync("() => document.getElementById('hover').hidden");
        await page.Page.Touchscreen.TapAsync(x - 60, y + 60);
        await page.Open.Has("#hover", "dB to count on, median");

        await page.Page.Locator(".level .stack").FocusAsync();
        await page.Page.Keyboard.PressAsync("Shift+ArrowLeft");
        await page.Page.Keyboard.PressAsync("ArrowUp");
        await page.Open.Has("#polite", "dB to count on, median");
    }

    [BrowserFact]
    public async Task What_is_shown_is_chosen_and_stands_in_the_address()
    {
        await using ServedPage page = await ServedPage.Of(fixture, DemoHouse.Text);
        byte[] countOn = await page.Open.MapOf(1);
        await page.Page.Locator("[data-key=layer]").SelectOptionAsync("median");
        await page.Page.WaitForFunctionAsync("() => location.hash.includes('layer=median')");
        byte[] median = await page.Open.MapOf(1);
        await page.Page.Locator("[data-key=layer]").SelectOptionAsync("probability");
        await page.Open.Has("#legend", "Probability of 15 dB or more");
        byte[] probability = await page.Open.MapOf(1);
        Assert.NotEqual(countOn, median);
        Assert.NotEqual(median, probability);

        await page.Page.Locator("[data-key=level]").SelectOptionAsync("1");
        await page.Page.WaitForFunctionAsync("() => location.hash.includes('level=living') && document.querySelectorAll('.level').length === 1");
        await using OpenPage other = await page.Open.Another(page.House.Server.Origin + "/" + new Uri(page.Page.Url).Fragment);
        await other.Settled();
        Assert.Equal(1, await other.Page.Locator(".level").CountAsync());
        Assert.Equal("probability", await other.Page.Locator("[data-key=layer]").InputValueAsync());
    }

    [BrowserFact]
    public async Task A_seat_is_explained_in_words_and_figures_with_its_paths_and_a_section()
    {
        await using ServedPage page = await ServedPage.Of(fixture, DemoHouse.Text);
        await page.Page.Locator("#seats button.link", new PageLocatorOptions { HasText = "den sofa right" }).ClickAsync();
        await page.Page.Locator("#link .section").WaitForAsync();
        await page.Open.Has("#link h2", "Larder shelf to den sofa right:");
        Assert.True(await page.Page.Locator(".level[data-level='0'] .path").CountAsync() > 0);
        Assert.True(await page.Page.Locator("#link .section .floor").CountAsync() > 0);
        await page.Page.Locator("#link summary").ClickAsync();
        await page.Open.Has("#link pre", "margin");
        await page.Button("#link", "Close").ClickAsync();
        await page.Page.WaitForFunctionAsync("() => document.getElementById('link').hidden && document.querySelectorAll('.level .path').length === 0");
    }

    [BrowserFact]
    public async Task Names_with_markup_are_names()
    {
        const string Name = "<img src=x onerror=document.title='owned'>\\\"'&lt;<svg>";
        string text = ServedHouse.Small.Replace("name: sofa", $"name: \"{Name}\"", StringComparison.Ordinal).Replace("house: Plover End", "house: \"<b onmouseover=alert(1)>Plover</b>\"", StringComparison.Ordinal);
        await using ServedPage page = await ServedPage.Of(fixture, text);
        string shown = Name.Replace("\\\"", "\"", StringComparison.Ordinal);
        Assert.Equal(shown, await page.Page.Locator("#seats button.link").First.InnerTextAsync());
        await page.Page.Locator("#seats button.link").First.ClickAsync();
        await page.Page.Locator("#link .section").WaitForAsync();
        Assert.Equal(0, await page.Page.Locator("img, b, script:not([src])").CountAsync());
        Assert.DoesNotContain("owned", await page.Page.TitleAsync(), StringComparison.Ordinal);
        Assert.Empty(page.Open.Said);
    }
}
