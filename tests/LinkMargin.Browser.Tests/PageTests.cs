using LinkMargin.Web.Protocol;
using Microsoft.Playwright;

namespace LinkMargin.Browser.Tests;

/// <summary>The page in a browser, as a person uses it.</summary>
public sealed class PageTests(BrowserFixture fixture) : IClassFixture<BrowserFixture>
{
    private const string Shelf = ".mark[data-key='spot shelf'] .hit";
    private const string Sofa = ".mark[data-key='seat sofa'] .hit";

    [BrowserFact]
    public async Task It_opens_without_a_word_in_the_console_and_asks_nobody_else()
    {
        await using ServedHouse house = await ServedHouse.OfDemo();
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Settled();
        await page.Has("#finding", "Larder shelf, the best of 4 spots: 5 of 7 seats pass. Probability of being the best spot:");
        Assert.Empty(page.Said);
        Assert.All(page.Asked, url => Assert.StartsWith(house.Server.Origin, url, StringComparison.Ordinal));
        Assert.DoesNotContain("token", page.Page.Url, StringComparison.Ordinal);
        Assert.Contains("spot=larder+shelf", page.Page.Url, StringComparison.Ordinal);

        // The figures of the list are those of the engine, as 'compare' prints them.
        LinkMargin.Web.Answers.Comparisons comparisons = house.Server.Services.Comparisons;
        SpotFigures shown = (await comparisons.Of(house.Tried.Current)).Spots[0];
        foreach (SeatFigure figure in shown.Seats)
        {
            Assert.Equal(figure.CountOn, await page.FigureOf(figure.Seat));
        }
    }

    [BrowserFact]
    public async Task Dragging_the_console_changes_figures_and_map_while_it_moves_and_one_undo_takes_it_back()
    {
        await using ServedHouse house = await ServedHouse.Of(ServedHouse.Small);
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Page.Locator("#toolbar select").First.SelectOptionAsync("shelf");
        await page.Has("#seats h2", "Shelf:");
        await page.Settled();
        string before = await page.FigureOf("sofa");
        byte[] mapBefore = await MapOf(page);

        await page.Drag(Shelf, 90, -120, drops: false);
        await page.FigureBecomes("sofa", before, isThat: false);
        await page.Page.WaitForFunctionAsync("() => document.querySelector('.level').dataset.fine === 'false'");
        Assert.NotEqual(mapBefore, await MapOf(page));
        Assert.Empty(house.Tried.Current.Steps);

        await page.Page.Mouse.UpAsync();
        await page.Has("#steps li", "move spot shelf to");
        Assert.Single(house.Tried.Current.Steps);
        await page.Settled();
        await page.Page.Locator("#toolbar button", new PageLocatorOptions { HasText = "Undo" }).ClickAsync();
        await page.FigureBecomes("sofa", before);
        Assert.Equal(ServedHouse.Small, house.Text);
        Assert.Empty(page.Said);
    }

    [BrowserFact]
    public async Task Escape_takes_a_drag_back()
    {
        await using ServedHouse house = await ServedHouse.Of(ServedHouse.Small);
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Settled();
        (float X, float Y) before = await page.MiddleOf(Sofa);
        await page.Drag(Sofa, 60, 40, drops: false);
        await page.Page.Keyboard.PressAsync("Escape");
        await page.Page.Mouse.UpAsync();
        await page.Page.WaitForFunctionAsync("at => { const box = document.querySelector(\".mark[data-key='seat sofa'] .body\").getBoundingClientRect(); return Math.abs(box.x + box.width / 2 - at) < 8; }", (double)before.X);
        Assert.Empty(house.Tried.Current.Steps);
    }

    [BrowserFact]
    public async Task The_console_is_dragged_to_another_level()
    {
        await using ServedHouse house = await ServedHouse.OfDemo();
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Settled();
        (float fromX, float fromY) = await page.MiddleOf(".mark[data-key='spot larder shelf'] .body");
        (float toX, float _) = await page.MiddleOf(".level[data-level='2'] canvas");
        await page.Drag(".mark[data-key='spot larder shelf'] .body", toX - fromX, 0);
        await page.Has("#steps li", "move spot larder shelf to");
        Assert.Equal(2, house.Tried.Current.Now.House.Spots.Single(spot => spot.Name == "larder shelf").LevelIndex);
        Assert.True(fromY > 0);
    }

    [BrowserFact]
    public async Task A_door_is_opened_by_a_click_and_the_list_shows_what_that_does()
    {
        await using ServedHouse house = await ServedHouse.Of(ServedHouse.Small);
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Settled();
        await page.Page.Locator(".grip[data-name='study door']").ClickAsync();
        await page.Page.Locator("#chosen button", new PageLocatorOptions { HasText = "Open it" }).ClickAsync();
        await page.Has("#steps li", "open door study door");
        await page.Page.Locator(".swing").WaitForAsync();
        await page.Has("#seats thead", "in the file");
        Assert.True(house.Tried.Current.Now.House.Levels[0].Walls.SelectMany(wall => wall.Openings).Single().IsOpen);
    }

    [BrowserFact]
    public async Task A_wall_gets_another_material_by_search()
    {
        await using ServedHouse house = await ServedHouse.Of(ServedHouse.Small);
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Settled();
        await page.Page.Locator("#chosen select").SelectOptionAsync(new SelectOptionValue { Label = "ground: wall lounge | study" });
        await page.Page.Locator("#chosen input[type=search]").FillAsync("brick");
        await page.Page.Locator("#chosen .found button").First.ClickAsync();
        await page.Has("#steps li", "material lounge | study = brick");
        Assert.Contains(house.Tried.Current.Now.House.Levels[0].Walls, wall => wall.Name == "lounge | study" && wall.Material.Name.Contains("brick", StringComparison.Ordinal));
    }

    [BrowserFact]
    public async Task Everything_goes_by_keys_alone()
    {
        await using ServedHouse house = await ServedHouse.Of(ServedHouse.Small);
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Settled();
        for (int i = 0; i < 60 && await page.Page.EvaluateAsync<string?>("() => document.activeElement.dataset?.key") != "seat sofa"; i++)
        {
            await page.Page.Keyboard.PressAsync("Tab");
        }

        Assert.Equal("seat sofa", await page.Page.EvaluateAsync<string?>("() => document.activeElement.dataset?.key"));
        await page.Page.Keyboard.PressAsync("ArrowRight");
        await page.Page.Keyboard.PressAsync("ArrowRight");
        await page.Page.Keyboard.PressAsync("Shift+ArrowUp");
        await page.Has("#steps li", "move seat sofa to 2.20 m, 4.00 m");
        Assert.Equal("seat sofa", await page.Page.EvaluateAsync<string?>("() => document.activeElement.dataset?.key"));
        await page.Page.Keyboard.PressAsync("[");
        await page.Has("#steps li", "turn seat sofa to 285");
        await page.Page.Keyboard.PressAsync("Control+z");
        await page.Page.Keyboard.PressAsync("Control+z");
        await page.Page.WaitForFunctionAsync("() => document.querySelectorAll('#steps li').length === 0");
        await page.Page.Keyboard.PressAsync("Control+y");
        await page.Has("#steps li", "move seat sofa to 2.20 m, 4.00 m");
        await page.Page.Keyboard.PressAsync("Enter");
        await page.Page.Locator("#link .section").WaitForAsync();
        await page.Page.Keyboard.PressAsync("l");
        await page.Page.WaitForFunctionAsync("() => location.hash.includes('layer=median')");
        await page.Page.Keyboard.PressAsync("Control+s");
        await page.Page.Locator("dialog").WaitForAsync();
        await page.Page.Keyboard.PressAsync("Escape");
        await page.Page.WaitForFunctionAsync("() => !document.querySelector('dialog')");
        Assert.Single(house.Tried.Current.Steps);
    }

    [BrowserFact]
    public async Task Saving_changes_the_moved_figures_and_no_other_byte()
    {
        await using ServedHouse house = await ServedHouse.Of(ServedHouse.Small);
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Settled();
        await page.Page.Locator(".mark[data-key='seat sofa']").FocusAsync();
        await page.Page.Keyboard.PressAsync("ArrowLeft");
        await page.Has("#steps li", "move seat sofa");
        await page.Page.Locator("#toolbar button", new PageLocatorOptions { HasText = "Save" }).ClickAsync();
        await page.Page.Locator("dialog button", new PageLocatorOptions { HasText = "Save in house.yaml" }).ClickAsync();
        await page.Has(".notice", "Saved in house.yaml");
        Assert.Equal(ServedHouse.Small.Replace("sofa, at: [2.0, 3.0]", "sofa, at: [1.9, 3.0]", StringComparison.Ordinal), house.Text);
        await page.Page.WaitForFunctionAsync("() => document.querySelectorAll('#steps li').length === 0");
    }

    [BrowserFact]
    public async Task Names_with_markup_are_names()
    {
        const string Name = "<img src=x onerror=document.title='owned'>\\\"'&lt;<svg>";
        string text = ServedHouse.Small.Replace("name: sofa", $"name: \"{Name}\"", StringComparison.Ordinal).Replace("house: Plover End", "house: \"<b onmouseover=alert(1)>Plover</b>\"", StringComparison.Ordinal);
        await using ServedHouse house = await ServedHouse.Of(text);
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Settled();
        string shown = Name.Replace("\\\"", "\"", StringComparison.Ordinal);
        Assert.Equal(shown, await page.Page.Locator("#seats table:not(.all) button.link").First.InnerTextAsync());
        await page.Page.Locator("#seats table:not(.all) button.link").First.ClickAsync();
        await page.Page.Locator("#link .section").WaitForAsync();
        Assert.Equal(0, await page.Page.Locator("img, b, script:not([src])").CountAsync());
        Assert.DoesNotContain("owned", await page.Page.TitleAsync(), StringComparison.Ordinal);
        Assert.Empty(page.Said);
    }

    [BrowserFact]
    public async Task After_the_server_was_killed_the_page_says_so_and_the_next_one_goes_on()
    {
        await using ServedHouse house = await ServedHouse.Of(ServedHouse.Small);
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Settled();
        await page.Page.Locator(".mark[data-key='seat sofa']").FocusAsync();
        await page.Page.Keyboard.PressAsync("ArrowLeft");
        await page.Has("#steps li", "move seat sofa");
        int port = house.Server.Port;
        await house.Server.DisposeAsync();
        await page.Has(".banner.bad", "The connection to LinkMargin is lost");

        await house.Start(port);
        await using OpenPage next = await page.Another(house.Server.NewAddress());
        await next.Has("#recovery", "1 change was tried before and not saved");
        await next.Page.Locator("#recovery button", new PageLocatorOptions { HasText = "Go on" }).ClickAsync();
        await next.Has("#steps li", "move seat sofa to 1.90 m");
        Assert.Equal(ServedHouse.Small, house.Text);
    }

    [BrowserFact]
    public async Task Two_pages_of_one_house_show_the_same()
    {
        await using ServedHouse house = await ServedHouse.Of(ServedHouse.Small);
        await using OpenPage one = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await using OpenPage other = await OpenPage.Of(fixture.Browser, house.Server.NewAddress(), 400, 800, ColorScheme.Dark);
        await one.Settled();
        await other.Settled();
        await one.Page.Locator(".mark[data-key='seat sofa']").FocusAsync();
        await one.Page.Keyboard.PressAsync("ArrowLeft");
        await other.Has("#steps li", "move seat sofa to 1.90 m");
        await other.Page.Locator("#steps button", new PageLocatorOptions { HasText = "Undo" }).ClickAsync();
        await one.Page.WaitForFunctionAsync("() => document.querySelectorAll('#steps li').length === 0");
        Assert.Empty(one.Said);
        Assert.Empty(other.Said);
    }

    [BrowserFact]
    public async Task Errors_in_a_file_edited_beside_the_page_are_named_until_they_are_fixed()
    {
        await using ServedHouse house = await ServedHouse.Of(ServedHouse.Small);
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Settled();
        await File.WriteAllTextAsync(house.HouseFile, ServedHouse.Small.Replace("door-hollow", "door-holow", StringComparison.Ordinal));
        await page.Has("#problems", "line 11");
        await page.Has("#problems", "did you mean 'door-hollow'");
        await File.WriteAllTextAsync(house.HouseFile, ServedHouse.Small.Replace("Plover End", "Plover's End", StringComparison.Ordinal));
        await page.Has("#subtitle", "Plover's End");
        Assert.Equal(0, await page.Page.Locator("#problems").CountAsync());
    }

    [BrowserFact]
    public async Task Best_places_are_found_in_the_background_and_tried_by_a_click()
    {
        await using ServedHouse house = await ServedHouse.Of(ServedHouse.Small);
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Settled();
        await page.Page.Keyboard.PressAsync("p");
        await page.Page.Locator("#jobs .results button").First.ClickAsync();
        await page.Has("#steps li", "move spot");
        await page.Page.Locator("#toolbar button", new PageLocatorOptions { HasText = "What would help" }).ClickAsync();
        await page.Has("#jobs", "remedies tried");
    }

    [BrowserFact]
    public async Task Maps_and_the_house_file_are_handed_out()
    {
        await using ServedHouse house = await ServedHouse.Of(ServedHouse.Small);
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Settled();
        await page.Page.Locator("#toolbar button", new PageLocatorOptions { HasText = "Hand out" }).ClickAsync();
        IDownload file = await page.Page.RunAndWaitForDownloadAsync(() => page.Page.Locator("dialog a", new PageLocatorOptions { HasText = "House file" }).ClickAsync());
        Assert.Equal("plover-end.yaml", file.SuggestedFilename);
        Assert.Equal(ServedHouse.Small, await File.ReadAllTextAsync(await file.PathAsync()));
        IDownload map = await page.Page.RunAndWaitForDownloadAsync(() => page.Page.Locator("dialog a", new PageLocatorOptions { HasText = "Maps of" }).ClickAsync());
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], (await File.ReadAllBytesAsync(await map.PathAsync()))[..4]);
    }

    [BrowserFact]
    public async Task The_margin_is_read_anywhere_by_pointing()
    {
        await using ServedHouse house = await ServedHouse.Of(ServedHouse.Small);
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Settled();
        (float x, float y) = await page.MiddleOf(".level canvas");
        await page.Page.Mouse.MoveAsync(x - 60, y + 60);
        await page.Has("#hover", "dB to count on, median");
    }

    /// <summary>Contrast by WCAG 2.2, success criterion 1.4.3 (relative luminance as defined there), and sizes, of every text a person sees.</summary>
    [BrowserFact]
    public async Task Text_is_large_and_dark_enough_in_light_and_dark()
    {
        await using ServedHouse house = await ServedHouse.Of(ServedHouse.Small);
        foreach (ColorScheme scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
        {
            await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress(), scheme: scheme);
            await page.Settled();
            await page.Page.Locator(".mark[data-key='seat sofa']").FocusAsync();
            await page.Page.Keyboard.PressAsync("Enter");
            await page.Page.Locator("#link .section").WaitForAsync();
            string[] faults = await page.Page.EvaluateAsync<string[]>(FaultsOfText);
            Assert.True(faults.Length == 0, $"{scheme}:\n{string.Join('\n', faults)}");
        }
    }

    [BrowserFact]
    public async Task A_narrow_window_scrolls_down_only_and_everything_has_a_name()
    {
        await using ServedHouse house = await ServedHouse.OfDemo();
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress(), 400, 800);
        await page.Settled();
        Assert.True(await page.Page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth"));
        string[] nameless = await page.Page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('button, select, input, a, [role=button], [role=img]')].filter(e => !(e.getAttribute('aria-label') || e.innerText?.trim() || e.closest('label')?.innerText.trim())).map(e => e.outerHTML)");
        Assert.Empty(nameless);
        string[] small = await page.Page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('button, select, input, .mark .hit')].map(e => [e, e.getBoundingClientRect()]).filter(([e, box]) => box.width > 0 && (box.height < 23.5 || box.width < 17.5)).map(([e, box]) => `${e.outerHTML} ${box.width} ${box.height}`).filter(text => !text.includes('checkbox'))");
        Assert.Empty(small);
    }

    private const string FaultsOfText = """
        () => {
          const parse = colour => { const m = colour.match(/[\d.]+/g).map(Number); return m.length === 4 ? m : [...m, 1]; };
          const over = (top, under) => [0, 1, 2].map(i => top[i] * top[3] + under[i] * (1 - top[3]));
          const light = c => { const [r, g, b] = c.map(v => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; }); return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
          const faults = [], walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
          for (let node = walker.nextNode(); node; node = walker.nextNode()) {
            const e = node.parentElement, style = getComputedStyle(e), box = e.getBoundingClientRect();
            if (!node.data.trim() || box.width === 0 || style.visibility === 'hidden' || e.closest('.unseen, option, svg, script, noscript, :disabled, #hover[hidden]')) continue;
            const chain = [];
            for (let up = e; up; up = up.parentElement) chain.unshift(parse(getComputedStyle(up).backgroundColor));
            const ground = chain.reduce((under, top) => over(top, under), [255, 255, 255]);
            const ink = over(parse(style.color), ground), a = light(ink), b = light(ground), contrast = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
            if (contrast < 4.5 || parseFloat(style.fontSize) < 12) faults.push(`${node.data.trim().slice(0, 40)}: contrast ${contrast.toFixed(2)}, ${style.fontSize}`);
          }
          for (const text of document.querySelectorAll('.marks text')) if (parseFloat(getComputedStyle(text).fontSize) < 12) faults.push(`${text.textContent}: small`);
          return faults;
        }
        """;

    private static async Task<byte[]> MapOf(OpenPage page) =>
        Convert.FromBase64String((await page.Page.Locator(".level canvas").First.EvaluateAsync<string>("canvas => canvas.toDataURL()")).Split(',')[1]);
}
