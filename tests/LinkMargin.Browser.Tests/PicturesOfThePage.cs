using Microsoft.Playwright;

namespace LinkMargin.Browser.Tests;

/// <summary>Pictures of the page to look at, and those of the README: made where a folder for them is named, and no test otherwise.</summary>
[Collection(OneBrowser.Name)]
public sealed class PicturesOfThePage(BrowserFixture fixture)
{
    public const string FolderVariable = "LINKMARGIN_PAGE_PICTURES";

    [BrowserFact]
    public async Task Are_made_where_a_folder_is_named()
    {
        if (Environment.GetEnvironmentVariable(FolderVariable) is not { Length: > 0 } folder)
        {
            return;
        }

        await using ServedHouse house = await ServedHouse.OfDemo();
        await Take(house, folder, "page-1", 1280, 800, ColorScheme.Light);
        await Take(house, folder, "page-dark", 1280, 800, ColorScheme.Dark);
        await Take(house, folder, "page-narrow", 400, 800, ColorScheme.Light);
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Settled();
        await page.Page.Locator("#seats button.link", new PageLocatorOptions { HasText = "den sofa right" }).First.ClickAsync();
        await page.Page.Locator("#link .section").WaitForAsync();
        await page.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, "page-2-all.png"), FullPage = true });
        await page.Page.Locator("#link").ScrollIntoViewIfNeededAsync();
        await page.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, "page-2.png") });
    }

    private async Task Take(ServedHouse house, string folder, string name, int width, int height, ColorScheme scheme)
    {
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress(), width, height, scheme);
        await page.Settled();
        await page.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"{name}.png") });
        await page.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"{name}-all.png"), FullPage = true });
    }
}
