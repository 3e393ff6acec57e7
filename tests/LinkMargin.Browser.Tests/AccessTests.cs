using LinkMargin.Files.Resources;
using Microsoft.Playwright;

namespace LinkMargin.Browser.Tests;

/// <summary>Everybody can use the page: by keys, on paper, in narrow windows, with little contrast to spare.</summary>
[Collection(OneBrowser.Name)]
public sealed class AccessTests(BrowserFixture fixture)
{
    [BrowserFact]
    public async Task Everything_goes_by_keys_alone()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        for (int i = 0; i < 60 && await page.Page.EvaluateAsync<string?>("() => document.activeElement.dataset?.key") != "seat sofa"; i++)
        {
            await page.Page.Keyboard.PressAsync("Tab");
        }

        Assert.Equal("seat sofa", await page.Page.EvaluateAsync<string?>("() => document.activeElement.dataset?.key"));
        await page.Page.Keyboard.PressAsync("ArrowRight");
        await page.Page.Keyboard.PressAsync("ArrowRight");
        await page.Page.Keyboard.PressAsync("Shift+ArrowUp");
        await page.Tried("seat 'sofa' is at 2.20 m east, 4.00 m north");
        Assert.Equal("seat sofa", await page.Page.EvaluateAsync<string?>("() => document.activeElement.dataset?.key"));
        await page.Page.Keyboard.PressAsync("[");
        await page.Tried("seat 'sofa' faces 285");

        // Keys in quick succession make one step; a busy machine may take them apart.
        int steps = page.Steps;
        Assert.InRange(steps, 2, 4);
        await PressOften("Control+z", steps);
        await page.NothingIsTried();
        await PressOften("Control+y", steps - 1);
        await page.Tried("seat 'sofa' is at 2.20 m east, 4.00 m north");
        await page.Page.Keyboard.PressAsync("Enter");
        await page.Page.Locator("#link .section").WaitForAsync();
        await page.Page.Keyboard.PressAsync("l");
        await page.Page.WaitForFunctionAsync("() => location.hash.includes('layer=median')");
        await page.Page.Keyboard.PressAsync("Control+s");
        await page.Page.Locator("dialog").WaitForAsync();
        await page.Page.Keyboard.PressAsync("Escape");
        await page.Page.WaitForFunctionAsync("() => !document.querySelector('dialog')");
        Assert.Equal(steps - 1, page.Steps);

        async Task PressOften(string key, int times)
        {
            for (int i = 0; i < times; i++)
            {
                await page.Page.Keyboard.PressAsync(key);
            }
        }
    }

    /// <summary>Contrast by WCAG 2.2, success criterion 1.4.3 (relative luminance as defined there), and sizes, of every text a person sees.</summary>
    [BrowserFact]
    public async Task Text_is_large_and_dark_enough_in_light_and_dark()
    {
        foreach (ColorScheme scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
        {
            await using ServedPage page = await ServedPage.Of(fixture, ServedHouse.Small, scheme: scheme);
            await page.Press("seat sofa", "Enter");
            await page.Page.Locator("#link .section").WaitForAsync();
            string[] faults = await page.Page.EvaluateAsync<string[]>(FaultsOfText);
            Assert.True(faults.Length == 0, $"{scheme}:\n{string.Join('\n', faults)}");
        }
    }

    [BrowserFact]
    public async Task A_narrow_window_scrolls_down_only_and_everything_has_a_name()
    {
        await using ServedPage page = await ServedPage.Of(fixture, DemoHouse.Text, 400);
        Assert.True(await page.Page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth"));
        string[] nameless = await page.Page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('button, select, input, a, [role=button], [role=img], [tabindex]')].filter(e => !(e.getAttribute('aria-label') || e.innerText?.trim() || e.closest('label')?.innerText.trim())).map(e => e.outerHTML)");
        Assert.Empty(nameless);
        string[] small = await page.Page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('button, select, input, .mark .hit')].map(e => [e, e.getBoundingClientRect()]).filter(([e, box]) => box.width > 0 && (box.height < 23.5 || box.width < 17.5)).map(([e, box]) => `${e.outerHTML} ${box.width} ${box.height}`).filter(text => !text.includes('checkbox'))");
        Assert.Empty(small);
    }

    [BrowserFact]
    public async Task Labels_stay_on_the_plan_and_off_one_another()
    {
        foreach (int width in new[] { 1280, 400 })
        {
            await using ServedPage page = await ServedPage.Of(fixture, DemoHouse.Text, width);
            string[] faults = await page.Page.EvaluateAsync<string[]>("""
                () => [...document.querySelectorAll('.stack')].flatMap(stack => {
                  const frame = stack.getBoundingClientRect(), labels = [...stack.querySelectorAll('.label')].map(e => [e.parentElement.dataset.key, e.getBoundingClientRect()]);
                  const out = labels.filter(([, box]) => box.left < frame.left || box.right > frame.right || box.top < frame.top || box.bottom > frame.bottom).map(([name]) => `${name} leaves the plan`);
                  const over = labels.flatMap(([name, a], i) => labels.slice(i + 1).filter(([, b]) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom).map(([other]) => `${name} covers ${other}`));
                  return [...out, ...over];
                })
                """);
            Assert.Empty(faults);
            Assert.Equal(7 + 4, await page.Page.Locator(".stack .label").CountAsync());
        }
    }

    [BrowserFact]
    public async Task Printing_gives_the_plans_and_leaves_out_what_only_a_screen_needs()
    {
        await using ServedPage page = await ServedPage.Of(fixture, DemoHouse.Text);
        await page.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        Assert.False(await page.Page.Locator("#toolbar").IsVisibleAsync());
        Assert.False(await page.Page.Locator("#chosen").IsVisibleAsync());
        Assert.Equal(3, await page.Page.Locator(".level canvas:visible").CountAsync());
        Assert.True(await page.Page.Locator("#legend").IsVisibleAsync());

        // On paper a plan has another width; its marks keep their places on it.
        (float markX, float _) = await page.Open.MiddleOf(".mark[data-key='spot den rack'] .body");
        await page.Page.SetViewportSizeAsync(700, 900);
        LocatorBoundingBoxResult plan = (await page.Page.Locator(".level[data-level='0'] .stack").BoundingBoxAsync())!;
        (float laterX, float _) = await page.Open.MiddleOf(".mark[data-key='spot den rack'] .body");
        Assert.InRange(laterX, plan.X, plan.X + (plan.Width / 3));
        Assert.NotEqual(markX, laterX);
    }

    [BrowserFact]
    public async Task Who_asks_for_less_motion_sees_none()
    {
        await using ServedPage page = await ServedPage.Of(fixture);
        await page.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ReducedMotion = ReducedMotion.Reduce });
        string[] moving = await page.Page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('*')].filter(e => { const style = getComputedStyle(e); return style.transitionDuration !== '0s' || style.animationName !== 'none'; }).map(e => e.outerHTML)");
        Assert.Empty(moving);
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
          for (const text of document.querySelectorAll('svg text')) if (text.getBoundingClientRect().height < 13.5) faults.push(`${text.textContent}: small`);
          return faults;
        }
        """;
}
