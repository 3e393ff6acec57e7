using System.Globalization;
using Xunit.Abstractions;

namespace LinkMargin.Browser.Tests;

/// <summary>How fast the page follows a hand, in the demo house: measured where it is asked for, asserted nowhere.</summary>
[Collection(OneBrowser.Name)]
public sealed class SpeedOfThePage(BrowserFixture fixture, ITestOutputHelper output)
{
    public const string Variable = "LINKMARGIN_PAGE_SPEED";

    private const string Measure = """
        async () => {
          const { store, put } = await import('/page/store.js');
          const frame = () => new Promise(done => requestAnimationFrame(done)), median = list => list.sort((a, b) => a - b)[list.length >> 1];
          const seats = [], maps = [];
          for (let i = 0; i < 60; i++) {
            const figures = store.figures, fields = store.fields, start = performance.now();
            put({ preview: { kind: 'move-spot', name: store.spot, level: 1, x: 3 + 0.03 * i, y: 6 + 0.02 * i, height: 1.6 } });
            while (store.figures === figures) await frame();
            await frame();
            seats.push(performance.now() - start);
            while (store.fields === fields) await frame();
            await frame();
            maps.push(performance.now() - start);
          }
          const start = performance.now();
          put({ preview: null });
          while (![...document.querySelectorAll('.level')].every(level => level.dataset.fine === 'true') || performance.now() - start < 50) await frame();
          return [median(seats), seats[56], median(maps), maps[56], performance.now() - start];
        }
        """;

    [BrowserFact]
    public async Task Is_measured_where_it_is_asked_for()
    {
        if (Environment.GetEnvironmentVariable(Variable) is not { Length: > 0 })
        {
            return;
        }

        await using ServedHouse house = await ServedHouse.OfDemo();
        await using OpenPage page = await OpenPage.Of(fixture.Browser, house.Server.NewAddress());
        await page.Settled();
        double[] ms = await page.Page.EvaluateAsync<double[]>(Measure);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"seats redrawn: {ms[0]:0} ms median, {ms[1]:0} ms at the 95th percentile; coarse map: {ms[2]:0} and {ms[3]:0} ms; fine map after letting go: {ms[4]:0} ms"));
    }
}
