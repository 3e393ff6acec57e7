using System.Text.RegularExpressions;
using LinkMargin.Web.Exports;
using Microsoft.Playwright;

namespace LinkMargin.Browser.Tests;

/// <summary>A report as a page, opened from a file by a browser.</summary>
[Collection(OneBrowser.Name)]
public sealed partial class ReportInBrowserTests(BrowserFixture fixture)
{
    [BrowserFact]
    public async Task A_report_needs_nothing_but_itself_can_be_explored_and_prints_alike_on_both_papers()
    {
        await using ServedHouse house = await ServedHouse.Of(ServedHouse.Small);
        ExportedFile report = await new Exporting(house.Server.Services).Make("report.html", "shelf", false, CancellationToken.None);
        string file = Path.Combine(Path.GetDirectoryName(house.HouseFile)!, report.Name);
        await File.WriteAllBytesAsync(file, report.Bytes);

        await using OpenPage open = await OpenPage.Of(fixture.Browser, new Uri(file).AbsoluteUri);
        ILocator map = open.Page.Locator("#explore-map"), said = open.Page.Locator("#explore-said");
        await map.ScrollIntoViewIfNeededAsync();
        await map.HoverAsync();
        string shelf = await said.InnerTextAsync();
        Assert.Matches(@"-?\d+\.\d dB", shelf);
        await open.Page.Locator("#explore-spot").SelectOptionAsync(new SelectOptionValue { Label = "desk" });
        await map.HoverAsync();
        Assert.NotEqual(shelf, await said.InnerTextAsync());

        int a4 = await Pages(open.Page, "A4"), letter = await Pages(open.Page, "Letter");
        Assert.InRange(a4, 3, 15);
        Assert.InRange(letter, a4 - 1, a4 + 1);
        Assert.Empty(open.Said);
        Assert.All(open.Asked, address => Assert.StartsWith("file://", address, StringComparison.Ordinal));
    }

    private static async Task<int> Pages(IPage page, string paper) =>
        PageOfPdf().Count(System.Text.Encoding.Latin1.GetString(await page.PdfAsync(new PagePdfOptions { Format = paper })));

    [GeneratedRegex(@"/Type\s*/Page\b")]
    private static partial Regex PageOfPdf();
}
