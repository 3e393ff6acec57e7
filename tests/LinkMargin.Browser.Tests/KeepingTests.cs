using Microsoft.Playwright;

namespace LinkMargin.Browser.Tests;

/// <summary>What was tried is kept, and handed out.</summary>
[Collection(OneBrowser.Name)]
public sealed class KeepingTests(BrowserFixture fixture)
{
    [BrowserFact]
    public async Task Saving_changes_the_moved_figures_and_no_other_byte()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await page.Press("seat sofa", "ArrowLeft");
        await page.Tried("seat 'sofa' is at");
        await page.Page.Keyboard.PressAsync("Control+s");
        await page.Button("dialog", "Save in house.yaml").ClickAsync();
        await page.Open.Has(".notice", "Saved in house.yaml");
        Assert.Equal(ServedHouse.Small.Replace("sofa, at: [2.0, 3.0]", "sofa, at: [1.9, 3.0]", StringComparison.Ordinal), page.House.Text);
        await page.NothingIsTried();
    }

    [BrowserFact]
    public async Task After_the_server_was_killed_the_page_says_so_and_the_next_one_goes_on()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await page.Press("seat sofa", "ArrowLeft");
        await page.Tried("seat 'sofa' is at");
        int port = page.House.Server.Port;
        await page.House.Server.DisposeAsync();
        await page.Open.Has(".banner.bad", "The connection to LinkMargin is lost");

        await page.House.Start(port);
        await using OpenPage next = await page.Open.Another(page.House.Server.NewAddress());
        await next.Has("#recovery", "1 change was tried before and not saved");
        await next.Page.Locator("#recovery button", new PageLocatorOptions { HasText = "Continue" }).ClickAsync();
        await next.Has("#steps li", "seat 'sofa' is at 1.90 m");
        Assert.Equal(ServedHouse.Small, page.House.Text);
    }

    [BrowserFact]
    public async Task Two_pages_of_one_house_show_the_same()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await using OpenPage other = await OpenPage.Of(fixture.Browser, page.House.Server.NewAddress(), 400, 800, ColorScheme.Dark);
        await other.Settled();
        await page.Press("seat sofa", "ArrowLeft");
        await other.Has("#steps li", "seat 'sofa' is at 1.90 m");
        await other.Page.Locator("#steps button", new PageLocatorOptions { HasText = "Undo" }).ClickAsync();
        await page.NothingIsTried();
        Assert.Empty(page.Open.Said);
        Assert.Empty(other.Said);
    }

    [BrowserFact]
    public async Task Errors_in_a_file_edited_beside_the_page_are_named_until_they_are_fixed()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await File.WriteAllTextAsync(page.House.HouseFile, ServedHouse.Small.Replace("door-hollow", "door-holow", StringComparison.Ordinal));
        await page.Open.Has("#problems", "line 11");
        await page.Open.Has("#problems", "did you mean 'door-hollow'");
        await File.WriteAllTextAsync(page.House.HouseFile, ServedHouse.Small.Replace("Plover End", "Plover's End", StringComparison.Ordinal));
        await page.Open.Has("#subtitle", "Plover's End");
        Assert.Equal(0, await page.Page.Locator("#problems").CountAsync());
    }

    [BrowserFact]
    public async Task A_file_that_changed_on_disk_is_not_written_over_and_the_page_says_what_differs()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await page.Press("seat sofa", "ArrowLeft");
        await page.Tried("seat 'sofa' is at");
        await page.Page.Keyboard.PressAsync("Control+s");
        string theirs = ServedHouse.Small.Replace("# the big one", "# theirs", StringComparison.Ordinal);
        await page.Page.Locator("dialog").WaitForAsync();

        // Written and saved over within the second in which the page has not looked yet.
        await File.WriteAllTextAsync(page.House.HouseFile, theirs);
        await page.Button("dialog", "Save in house.yaml").ClickAsync();
        await page.Page.WaitForFunctionAsync("() => document.querySelector('.notice')");
        string said = await page.Page.Locator(".notice").InnerTextAsync();
        Assert.True(said.Contains("# theirs", StringComparison.Ordinal) || page.House.Text == theirs.Replace("sofa, at: [2.0, 3.0]", "sofa, at: [1.9, 3.0]", StringComparison.Ordinal), said);
        Assert.Contains("# theirs", page.House.Text, StringComparison.Ordinal);
    }

    [BrowserFact]
    public async Task Maps_report_and_house_file_are_handed_out()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await page.Button("#toolbar", "Export").ClickAsync();
        IDownload file = await page.Page.RunAndWaitForDownloadAsync(() => page.Button("dialog", "House file").ClickAsync());
        Assert.Equal("plover-end.yaml", file.SuggestedFilename);
        Assert.Equal(ServedHouse.Small, await File.ReadAllTextAsync(await file.PathAsync()));
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], await Begin("Maps of"));
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], await Begin("Sheet"));
        Assert.Equal("%PDF"u8.ToArray(), await Begin("Report"));
        await page.Open.Has("dialog", "is in your browser’s downloads.");
        Assert.Empty(page.Open.Said);

        async Task<byte[]> Begin(string what)
        {
            IDownload made = await page.Page.RunAndWaitForDownloadAsync(() => page.Button("dialog", what).First.ClickAsync());
            return (await File.ReadAllBytesAsync(await made.PathAsync()))[..4];
        }
    }

    [BrowserFact]
    public async Task What_cannot_be_handed_out_is_said_where_it_was_asked_for()
    {
        await using ServedPage page = await ServedPage.Of(
            fixture, ServedHouse.Small.Replace("facing: south}", "facing: south, plays: desk}", StringComparison.Ordinal).Replace("facing: west}", "facing: west, plays: desk}", StringComparison.Ordinal));
        await page.Page.Locator("[data-key=spot]").SelectOptionAsync("shelf");
        await page.Open.Has("#seats h2", "Shelf: no seat plays here");
        await page.Button("#toolbar", "Export").ClickAsync();
        await page.Button("dialog", "Report").First.ClickAsync();
        await page.Open.Has("dialog", "no seat plays a console at 'shelf'");
    }
}
