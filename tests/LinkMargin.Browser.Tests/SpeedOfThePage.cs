using System.Diagnostics;
using System.Globalization;
using System.Text;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Files.Changes;
using LinkMargin.Files.Resources;
using LinkMargin.Reports.Houses;
using LinkMargin.Web.Answers;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Live;
using Microsoft.Playwright;
using Xunit.Abstractions;

namespace LinkMargin.Browser.Tests;

/// <summary>
/// How fast the page follows a hand: measured where it is asked for, asserted nowhere. Times by the clock say little on a machine that others use, so the
/// processor time of the same work stands beside them.
/// </summary>
[Collection(OneBrowser.Name)]
public sealed class SpeedOfThePage(BrowserFixture fixture, ITestOutputHelper output)
{
    public const string Variable = "LINKMARGIN_PAGE_SPEED";

    private const int Moves = 60, Across = 23, Deep = 22;

    private const string Follow = """
        async places => {
          const { store, put } = await import('/page/store.js');
          const frame = () => new Promise(done => requestAnimationFrame(done)), at = (list, share) => list.sort((a, b) => a - b)[Math.floor(share * (list.length - 1))];
          const seats = [], maps = [];
          for (const [x, y] of places) {
            const figures = store.figures, fields = store.fields, start = performance.now();
            put({ preview: { kind: 'move-spot', name: store.spot, level: store.house.spots.find(spot => spot.name === store.spot).level, x, y, height: 1.6 } });
            while (store.figures === figures) await frame();
            await frame();
            seats.push(performance.now() - start);
            while (store.fields === fields) await frame();
            await frame();
            maps.push(performance.now() - start);
          }
          const start = performance.now();
          put({ preview: null });
          await frame();
          await frame();
          while (![...document.querySelectorAll('.level')].every(level => level.dataset.fine === 'true')) await frame();
          return [at(seats, 0.5), at(seats, 0.95), at(maps, 0.5), at(maps, 0.95), performance.now() - start];
        }
        """;

    private const string Swing = """
        async seconds => {
          const { store, put } = await import('/page/store.js');
          const end = performance.now() + 1000 * seconds;
          for (let i = 0; performance.now() < end; i++) {
            put({ preview: { kind: 'move-spot', name: store.spot, level: 1, x: 3.5 + 2 * Math.sin(i / 40), y: 5 + 3 * Math.cos(i / 57), height: 1.6 } });
            await new Promise(done => setTimeout(done, 16));
          }
          put({ preview: null });
        }
        """;

    [BrowserFact]
    public async Task Is_measured_where_it_is_asked_for()
    {
        if (Environment.GetEnvironmentVariable(Variable) is not { Length: > 0 } asked)
        {
            return;
        }

        Say($"other work: load {(await File.ReadAllTextAsync("/proc/loadavg")).Split(' ')[0]} on {Environment.ProcessorCount} cores");
        await Following("demo house", DemoHouse.Text, i => [3 + (0.03 * i), 6 + (0.02 * i)]);
        await Following("1,000 walls", Grid(), i => [30 + (0.03 * i), 31 + (0.02 * i)]);
        await Memory(double.Parse(asked, CultureInfo.InvariantCulture));
    }

    private static double Median(IEnumerable<double> all)
    {
        double[] sorted = [.. all.Order()];
        return sorted[sorted.Length / 2];
    }

    /// <summary>Rooms of 3 m by 3 m with doors between some of them: about a thousand walls, and seven seats about the middle.</summary>
    private static string Grid()
    {
        var text = new StringBuilder("house: Grid\nlevels:\n  - name: ground\n    height: 2.4\n    outer: brick-block-cavity\n    inner: drywall-stud\n    rooms:\n");
        for (int row = 0; row < Deep; row++)
        {
            for (int column = 0; column < Across; column++)
            {
                text.Append(CultureInfo.InvariantCulture, $"      - {{name: room {column} {row}, corner: [{3 * column}, {3 * row}], size: [3, 3]}}\n");
            }
        }

        text.Append("spots:\n  - {name: shelf, at: [31.5, 31.5, 1.6]}\nseats:\n");
        for (int i = 0; i < 7; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  - {{name: seat {i}, at: [{28.3 + (2 * i)}, {29.1 + i}], facing: south}}\n");
        }

        return text.ToString();
    }

    private async Task Following(string name, string text, Func<int, double[]> place)
    {
        var clock = Stopwatch.StartNew();
        await using ServedPage page = await ServedPage.Of(fixture, text);
        double first = clock.Elapsed.TotalSeconds;
        double[] ms = await page.Page.EvaluateAsync<double[]>(Follow, Enumerable.Range(0, Moves).Select(place).ToArray());
        Say($"{name}, {page.House.Tried.Current.Now.House.Levels.Sum(level => level.Walls.Count)} walls: first fine map {first:0.0} s after the start");
        Say($"  from move to seats {ms[0]:0} ms median, {ms[1]:0} ms at the 95th percentile; to the coarse map {ms[2]:0} and {ms[3]:0} ms; fine map after letting go {ms[4]:0} ms");
        Work(name, page, place);
    }

    // The server's share alone, in processor time: of all its threads.
    private void Work(string name, ServedPage page, Func<int, double[]> place)
    {
        PageServices services = page.House.Server.Services;
        HouseState state = page.House.Tried.Current;
        string spotName = state.Now.House.Spots[0].Name;
        List<double> seats = [], quick = [], coarse = [];
        DrawnSeats nearby = services.Figures.Of(state, state.Now, [], state.Now.House.Spots[0]);
        for (int i = 0; i < Moves / 2; i++)
        {
            double[] at = place(i);
            (LoadedHouse now, _, _) = Step.Try(
                state.Now, [], [new HouseChange(ChangeKinds.MoveSpot) { Name = spotName, Level = state.Now.House.Spots[0].LevelIndex, X = at[0], Y = at[1], Height = 1.6 }]);
            Spot spot = now.House.Spots.First(one => one.Name == spotName);
            LinkModel model = services.Models.For(now.House, []);
            quick.Add(Processor(() => services.Figures.Quick(state, now, [], spot, nearby)!));
            seats.Add(Processor(() => services.Figures.Of(state, now, [], spot)));
            coarse.Add(Processor(() => services.Fields.Coarse(model, spot, 7, CancellationToken.None)));
        }

        HouseState still = state;
        Spot kept = still.Now.House.Spots[0];
        double fine = Processor(() => services.Fields.Fine(services.Models.For(still.Now.House, []), kept, kept.LevelIndex, CancellationToken.None).ToArray());
        Say($"  {name}, processor time of the server: seats while dragging {Median(quick):0} ms, at rest {Median(seats):0} ms, coarse map {Median(coarse):0} ms, fine map {fine:0} ms");
    }

    private static double Processor(Func<object> work)
    {
        TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
        GC.KeepAlive(work());
        return (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds;
    }

    private async Task Memory(double minutes)
    {
        await using ServedPage page = await ServedPage.Of(fixture, DemoHouse.Text);
        ICDPSession session = await page.Page.Context.NewCDPSessionAsync(page.Page);
        await Swung(0.2);
        for (int part = 0; part < 4; part++)
        {
            await Swung(minutes / 4);
        }

        async Task Swung(double while_)
        {
            await page.Page.EvaluateAsync(Swing, 60 * while_);
            await page.Open.Settled();
            await session.SendAsync("HeapProfiler.collectGarbage");
            double heap = (await session.SendAsync("Runtime.getHeapUsage"))!.Value.GetProperty("usedSize").GetDouble();
            Say($"after {60 * while_:0} s more of dragging: page {heap / 1e6:0.0} MB, server {GC.GetTotalMemory(forceFullCollection: true) / 1e6:0.0} MB in use, {Process.GetCurrentProcess().WorkingSet64 / 1e6:0} MB held");
        }
    }

    private void Say(FormattableString text) => output.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
