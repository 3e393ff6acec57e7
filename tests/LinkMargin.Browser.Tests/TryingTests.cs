using LinkMargin.Engine.Houses;
using LinkMargin.Files.Resources;
using Microsoft.Playwright;

namespace LinkMargin.Browser.Tests;

/// <summary>What a person tries on the page.</summary>
[Collection(OneBrowser.Name)]
public sealed class TryingTests(BrowserFixture fixture)
{
    private const string Shelf = ".mark[data-key='spot shelf'] .hit";
    private const string Sofa = ".mark[data-key='seat sofa'] .hit";

    [BrowserFact]
    public async Task Dragging_the_console_changes_figures_and_map_while_it_moves_and_one_undo_takes_it_back()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await page.Page.Locator("[data-key=spot]").SelectOptionAsync("shelf");
        await page.Open.Has("#seats h2", "Shelf:");
        await page.Open.Settled();
        string before = await page.Open.FigureOf("sofa");
        byte[] mapBefore = await page.Open.MapOf(0);

        await page.Open.Drag(Shelf, 90, -120, drops: false);
        await page.Open.FigureBecomes("sofa", before, isThat: false);
        await page.Page.WaitForFunctionAsync("() => document.querySelector('.level').dataset.fine === 'false'");
        await page.Open.MapChanges(0, mapBefore);
        Assert.Equal(0, page.Steps);

        await page.Page.Mouse.UpAsync();
        await page.Tried("spot 'shelf' is at");
        Assert.Equal(1, page.Steps);
        await page.Open.Settled();
        await page.Button("#toolbar", "Undo").ClickAsync();
        await page.Open.FigureBecomes("sofa", before);
        Assert.Equal(ServedHouse.Small, page.House.Text);
        Assert.Empty(page.Open.Said);
    }

    [BrowserFact]
    public async Task Escape_takes_a_drag_back()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        (float X, float Y) before = await page.Open.MiddleOf(Sofa);
        await page.Open.Drag(Sofa, 60, 40, drops: false);
        await page.Page.Keyboard.PressAsync("Escape");
        await page.Page.Mouse.UpAsync();
        await page.Page.WaitForFunctionAsync("at => { const box = document.querySelector(\".mark[data-key='seat sofa'] .body\").getBoundingClientRect(); return Math.abs(box.x + box.width / 2 - at) < 8; }", (double)before.X);
        Assert.Equal(0, page.Steps);
    }

    [BrowserFact]
    public async Task A_finger_drags_a_mark_and_does_not_scroll_the_page()
    {
        await using ServedPage page = await ServedPage.Of(fixture, ServedHouse.Small, 400, hasTouch: true);
        ICDPSession session = await page.Page.Context.NewCDPSessionAsync(page.Page);
        (float x, float y) = await page.Open.MiddleOf(Sofa);
        await Touch("touchStart", (x, y));
        for (int i = 1; i <= 8; i++)
        {
            await Touch("touchMove", (x + (4 * i), y - (8 * i)));
        }

        await Touch("touchEnd");
        await page.Tried("seat 'sofa' is at");
        Assert.Equal(0, await page.Page.EvaluateAsync<double>("() => scrollY"));

        Task Touch(string type, params (float X, float Y)[] at) => session.SendAsync("Input.dispatchTouchEvent", new Dictionary<string, object>
        {
            ["type"] = type,
            ["touchPoints"] = at.Select(point => new Dictionary<string, object> { ["x"] = point.X, ["y"] = point.Y }).ToArray(),
        });
    }

    [BrowserFact]
    public async Task The_console_is_dragged_to_another_level()
    {
        await using ServedPage page = await ServedPage.Of(fixture, DemoHouse.Text);
        (float fromX, float _) = await page.Open.MiddleOf(".mark[data-key='spot larder shelf'] .body");
        (float toX, float _) = await page.Open.MiddleOf(".level[data-level='2'] canvas");
        await page.Open.Drag(".mark[data-key='spot larder shelf'] .body", toX - fromX, 0);
        await page.Tried("spot 'larder shelf' is at");
        Assert.Equal(2, page.House.Tried.Current.Now.House.Spots.Single(spot => spot.Name == "larder shelf").LevelIndex);
    }

    [BrowserFact]
    public async Task A_click_opens_a_door_another_shuts_it_and_the_list_shows_what_that_does()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await page.Page.Locator(".grip[data-name='study door']").HoverAsync();
        await page.Open.Has("#hover", "study door: shut, door-hollow. Click to open it");
        await page.Page.Locator(".grip[data-name='study door']").ClickAsync();
        await page.Tried("'study door' is open");
        await page.Page.Locator(".swing").WaitForAsync();
        await page.Open.Has("#seats thead", "in the file");
        await page.Open.Has("#subtitle", "Plover End");
        Assert.True(DoorOf(page).IsOpen);
        await page.Button("#chosen", "Shut it").ClickAsync();
        await page.Tried("'study door' is shut");
        Assert.False(DoorOf(page).IsOpen);
    }

    /// <summary>Two windows without names on one side of a room are one line of the list, and change together.</summary>
    [BrowserFact]
    public async Task Windows_that_share_a_name_are_listed_once_and_said_to_change_together()
    {
        const string Two = "    windows:\n      - {room: lounge, side: south, at: 0.5, width: 1, material: glass-double}\n      - {room: lounge, side: south, at: 2.2, width: 1, material: glass-double}\n";
        await using ServedPage page = await ServedPage.Of(fixture, ServedHouse.Small.Replace("fixtures:\n", Two + "fixtures:\n", StringComparison.Ordinal));
        ILocator list = page.Page.Locator("[data-key=find]");
        Assert.Equal(1, await list.Locator("option", new LocatorLocatorOptions { HasText = "window south of lounge (2), shut" }).CountAsync());
        await list.SelectOptionAsync(new SelectOptionValue { Label = "ground: window south of lounge (2), shut" });
        await page.Open.Has("#chosen", "they change together");
        await page.Button("#chosen", "Open them").ClickAsync();
        await page.Tried("'window south of lounge' is open");
        Assert.Equal(2, page.House.Tried.Current.Now.House.Levels[0].Walls.SelectMany(wall => wall.Openings).Count(one => one.Name == "window south of lounge" && one.IsOpen));
    }

    /// <summary>A spot that has a radio of its own names it beside itself and below all figures.</summary>
    [BrowserFact]
    public async Task A_spot_with_its_own_console_names_it()
    {
        await using ServedPage page = await ServedPage.Of(fixture, ServedHouse.Small.Replace("{name: shelf, at: [0.6, 0.6, 1.2]}", "{name: shelf, at: [0.6, 0.6, 1.2], radio: console-low-energy}", StringComparison.Ordinal));
        await page.Page.Locator("[data-key=spot]").SelectOptionAsync("shelf");
        await page.Open.Has("#chosen", "Its console, from the house file: console-low-energy");
        await page.Open.Has("#footer", "with console-typical, at shelf with console-low-energy.");
        await page.Page.Locator("[data-key=spot]").SelectOptionAsync("desk");
        await page.Open.Has("#chosen h2", "desk");
        Assert.Equal(0, await page.Page.Locator("#chosen p", new PageLocatorOptions { HasText = "Its console" }).CountAsync());
    }

    [BrowserFact]
    public async Task A_wall_gets_another_material_by_search()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await page.Page.Locator("[data-key=find]").SelectOptionAsync(new SelectOptionValue { Label = "ground: wall lounge | study" });
        await page.Page.Locator("#chosen input[type=search]").FillAsync("brick");
        await page.Page.Locator("#chosen .found button").First.ClickAsync();
        await page.Tried("wall 'lounge | study' is of brick");
        Assert.Contains(page.House.Tried.Current.Now.House.Levels[0].Walls, wall => wall.Name == "lounge | study" && wall.Material.Name.Contains("brick", StringComparison.Ordinal));
    }

    [BrowserFact]
    public async Task Radios_people_and_fixtures_are_tried()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await page.Page.Locator("[data-key=controller]").SelectOptionAsync("controller-class-1");
        await page.Tried("the controllers are controller-class-1");
        await page.Page.Locator("[data-key=people]").CheckAsync();
        await page.Tried("people sit on 'sofa', 'chair'");
        Assert.Equal(2, page.House.Tried.Current.Occupied.Count);
        await page.Page.Locator(".fixture[data-name=bookcase]").ClickAsync();
        await page.Button("#chosen", "Remove it").ClickAsync();
        await page.Tried("fixture 'bookcase' is removed");
        Assert.DoesNotContain(page.House.Tried.Current.Now.House.Fixtures, one => one.Name == "bookcase");

        await page.Button("#steps", "As in the file").ClickAsync();
        await page.NothingIsTried();
        Assert.Equal(0, page.Steps);
        await page.Button("#steps", "Redo (3)").ClickAsync();
        await page.Tried("the controllers are controller-class-1");
    }

    [BrowserFact]
    public async Task A_seat_is_turned_by_its_handle()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await page.Page.Locator(Sofa).ClickAsync();
        await page.Page.Locator(".mark[data-key='seat sofa'] .turn").WaitForAsync();
        await page.Open.Drag(".mark[data-key='seat sofa'] .turn", 40, -26);
        await page.Tried("seat 'sofa' faces");
        Assert.NotEqual(270, page.House.Tried.Current.Now.House.Seats[0].FacingDegrees!.Value, 10.0);
    }

    [BrowserFact]
    public async Task Results_of_searches_are_on_the_plan_and_tried_by_a_click()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await page.Page.Keyboard.PressAsync("p");
        await page.Page.Locator("#jobs .results button").First.WaitForAsync();
        await page.Page.Locator(".mark.place").First.ClickAsync();
        await page.Tried("spot '");
        await page.Button("#toolbar", "What would help").ClickAsync();
        await page.Open.Has("#jobs", "Remedies that help");
        await page.Page.Locator("#jobs .results button").First.ClickAsync();
        await page.Page.WaitForFunctionAsync("() => document.querySelectorAll('#steps li').length === 2");
    }

    private static Opening DoorOf(ServedPage page) => page.House.Tried.Current.Now.House.Levels[0].Walls.SelectMany(wall => wall.Openings).Single();

    [BrowserFact]
    public async Task Undo_by_keys_works_after_a_tick_box_and_a_list()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await page.Page.Locator("[data-key=people]").CheckAsync();
        await page.Tried("people sit on 'sofa', 'chair'");
        await page.Page.Keyboard.PressAsync("Control+z");
        await page.Page.WaitForFunctionAsync("() => document.querySelectorAll('#steps li').length === 0");
        await page.Page.Locator("[data-key=controller]").SelectOptionAsync("controller-class-1");
        await page.Tried("the controllers are controller-class-1");
        await page.Page.Locator("[data-key=controller]").FocusAsync();
        await page.Page.Keyboard.PressAsync("Control+z");
        await page.Page.WaitForFunctionAsync("() => document.querySelectorAll('#steps li').length === 0");
        Assert.Equal(0, page.Steps);
    }

    [BrowserFact]
    public async Task A_number_that_is_refused_is_explained_at_its_field_and_taken_back()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await page.Button("#seats", "sofa").First.ClickAsync();
        ILocator east = page.Page.Locator("[data-key='sofa East']");
        await east.FillAsync("99");
        await east.BlurAsync();
        await page.Open.Has("#chosen .refusal", "outside the level 'ground', which reaches East from 0 to 7 m, North from 0 to 5 m");
        Assert.Equal("2", await east.InputValueAsync());
        Assert.Equal(0, page.Steps);
    }

    [BrowserFact]
    public async Task What_stands_between_is_the_first_thing_said_of_a_link()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await page.Button("#seats", "chair").First.ClickAsync();
        await page.Open.Has("#link p", "on the straight line");
        Assert.Contains("on the straight line", await page.Page.Locator("#link p").First.InnerTextAsync(), StringComparison.OrdinalIgnoreCase);
    }
}
