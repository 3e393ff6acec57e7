using System.Collections.Concurrent;
using System.Globalization;
using System.Text.Json;
using LinkMargin.Cli.Commands;
using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Resources;
using LinkMargin.Files.Tables;
using LinkMargin.Plots.Charts;
using LinkMargin.Plots.Maps;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Pictures;

namespace LinkMargin.Cli.Tests;

/// <summary>
/// One link, one figure: what any command says of a seat with a spot, in text, JSON or a picture, is what <c>compare --json</c>
/// says of it, and what is called a margin and not a median is the margin to count on.
/// </summary>
public sealed class FigureConsistencyTests : IDisposable
{
    // Every test asks for the same of each house.
    private static readonly ConcurrentDictionary<(string File, string Depth, string Confidence), Lazy<Links>> Known = new();

    private readonly ScratchFolder folder = new();

    public FigureConsistencyTests()
    {
        folder.Put("demo.yaml", DemoHouse.Text);
        folder.Put("cottage.yaml", SampleFile.Modest);
    }

    public static TheoryData<string, string, string> Houses => new()
    {
        { "demo.yaml", "direct", "0.9" },
        { "cottage.yaml", "full", "0.9" },
        { "cottage.yaml", "direct", "0.75" },
    };

    public void Dispose() => folder.Dispose();

    [Theory]
    [MemberData(nameof(Houses))]
    public void Compare_prints_what_its_json_says(string file, string depth, string confidence)
    {
        Links links = LinksOf(file, depth, confidence);
        string[] lines = [.. CommandRun.In(folder.Path, Terminal.GreatestWidth, "compare", file, "--model", depth, "--confidence", confidence).Output.Split('\n').Select(OneBlank)];
        foreach (IGrouping<string, Link> seat in links.All.GroupBy(link => link.Seat))
        {
            string[] rows = [.. lines.Where(line => line.StartsWith(seat.Key + " ", StringComparison.Ordinal))];
            string atConfidence = string.Join(' ', InOrder(seat).Select(link => (link.Passes ? "" : "! ") + link.AtConfidence));
            Assert.Contains(rows, row => row.EndsWith($" {ShownMargin.RequiredText(seat.First().RequiredDb)} {atConfidence}", StringComparison.Ordinal));
            Assert.Contains(rows, row => InOrder(seat).All(link => row.Contains($" {ShownMargin.Text(link.MedianDb)} ", StringComparison.Ordinal)));
        }

        foreach (JsonElement rank in links.Root.GetProperty("ranking").EnumerateArray())
        {
            Link worst = links.Of(rank.GetProperty("spot").GetString()!, rank.GetProperty("weakestSeat").GetString()!);
            Assert.Contains(lines, line => line.Contains($" {worst.Seat} {(worst.Passes ? "" : "! ")}{worst.AtConfidence} ", StringComparison.Ordinal));
        }

        IEnumerable<Link> InOrder(IEnumerable<Link> some) => links.House.Spots.Select(spot => some.Single(link => link.Spot == spot.Name));
    }

    [Theory]
    [MemberData(nameof(Houses))]
    public void Explain_and_the_picture_of_paths_say_the_same_of_every_link(string file, string depth, string confidence)
    {
        Links links = LinksOf(file, depth, confidence);
        var maker = new PathsPictures(links.Loaded, links.Model);

        // Every link of a few seats: each costs a run of its own.
        foreach (Link link in links.All.Where((_, i) => i % (1 + (links.All.Length / 8)) == 0))
        {
            string[] options = [file, "--model", depth, "--confidence", confidence, "--spot", link.Spot, "--seat", link.Seat];
            CommandRun text = Run(["explain", .. options]), paths = Run(["map", "--paths", "--force", "--json", .. options]);
            AssertSame(link, Run(["explain", "--json", .. options]).Json);
            AssertSame(link, paths.Json);
            Assert.Contains($" the margin is at least {link.AtConfidence} dB: the margin to count on.", text.OutputUnwrapped, StringComparison.Ordinal);
            Assert.Contains($"of the unknown losses the median is {ShownMargin.Text(link.MedianDb)} dB", text.OutputUnwrapped, StringComparison.Ordinal);
            string row = Assert.Single(text.Output.Split('\n'), line => line.StartsWith("margin to count on  ", StringComparison.Ordinal));
            Assert.Equal(ShownMargin.Text(link.MarginAtConfidenceDb), OneBlank(row).Split(' ')[4..6].MinBy(figure => double.Parse(figure, CultureInfo.InvariantCulture)));
            Assert.Equal(link.Passes, text.ExitCode == 0);

            LinkBudget budget = links.Ranking.Scores.SelectMany(score => score.Budgets).Single(b => b.Spot.Name == link.Spot && b.Seat.Name == link.Seat);
            string caption = maker.RequestFor(budget, links.Uncertainty).Caption;
            Assert.Contains($"): {link.AtConfidence} dB, ", caption, StringComparison.Ordinal);
            Assert.Contains($" Median {ShownMargin.Text(link.MedianDb)} dB.", caption, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Houses))]
    public void Labels_and_bars_of_pictures_are_the_same_figures(string file, string depth, string confidence)
    {
        Links links = LinksOf(file, depth, confidence);
        foreach (bool showsMedian in new[] { false, true })
        {
            (Field, Field)[] fields =
            [
                .. from spot in links.House.Spots
                   from level in Enumerable.Range(0, links.House.Levels.Count)
                   let plain = FieldComputation.Compute(links.Model, new FieldRequest(spot, level) { CellMetres = 2 })
                   select (plain, FieldAtConfidence.Of(links.Model, plain, links.Loaded.Uncertainty, links.Uncertainty.Confidence)),
            ];
            var pictures = new MapPictures(links.Loaded, links.Model, fields, new MapView(links.House.Spots, links.Uncertainty.Confidence, showsMedian));
            MapRequest[] maps = [.. fields.Select(pair => pictures.RequestFor(pair.Item1, pair.Item2))];
            Assert.All(maps, map => Assert.StartsWith(showsMedian ? "Median link margin, dB" : "Link margin to count on, dB", map.Caption, StringComparison.Ordinal));
            Assert.All(maps, map => Assert.Equal(showsMedian ? fields.First(f => f.Item1.Spot == map.Field.Spot && f.Item1.LevelIndex == map.Field.LevelIndex).Item1 : map.Hatched, map.Field));
            (Field Field, SeatMark Mark)[] marks = [.. maps.SelectMany(map => map.Seats.Select(mark => (map.Field, mark)))];
            Assert.Equal(links.All.Length, marks.Length);
            Assert.All(marks, one =>
            {
                Link link = links.Of(one.Field.Spot.Name, one.Mark.Seat.Name);
                Assert.Equal(ShownMargin.Text(showsMedian ? link.MedianDb : link.MarginAtConfidenceDb), ShownMargin.Text(one.Mark.MarginDb));
                Assert.Equal(link.Passes, one.Mark.Passes);
            });
        }

        SpotsRequest chart = SpotsPictures.RequestOf(links.Loaded, links.Ranking, links.Uncertainty, links.Call);
        (string Seat, SpotBar Bar)[] bars = [.. chart.Seats.SelectMany(seat => seat.Bars.Select(bar => (seat.Name, bar)))];
        Assert.Equal(links.All.Length, bars.Length);
        Assert.All(bars, one =>
        {
            Link link = links.Of(links.Ranking.Scores[one.Bar.Spot].Spot.Name, one.Seat);
            Assert.Equal((ShownMargin.Text(link.MarginAtConfidenceDb), ShownMargin.Text(link.MedianDb), link.Passes), (ShownMargin.Text(one.Bar.MarginAtConfidenceDb), ShownMargin.Text(one.Bar.MedianDb), one.Bar.Passes));
        });
    }

    [Theory]
    [MemberData(nameof(Houses))]
    public void Place_and_improve_start_from_the_same_figures_and_the_picture_has_those_of_the_table(string file, string depth, string confidence)
    {
        Links links = LinksOf(file, depth, confidence);
        JsonElement first = links.Root.GetProperty("ranking")[0];
        var request = new PlaceRequest { CellMetres = 0.8, HeightsMetres = [1] };
        string[] options = [file, "--model", depth, "--confidence", confidence];
        CommandRun places = Run(["place", "--grid", "0.8", "--height", "1", .. options]);
        JsonElement json = Run(["place", "--grid", "0.8", "--height", "1", "--json", .. options]).Json;
        AssertSameRank(first, json.GetProperty("bestSpot"));
        AssertSameRank(first, Run(["improve", "--json", .. options]).Json.GetProperty("before"));

        var search = new PlaceSearch(links.Model, request, new JudgeAtConfidence(links.Loaded.Uncertainty, links.Uncertainty.Confidence));
        ChoiceRequest shown = new ChoicePictures(links.Loaded, links.Model, links.Uncertainty.Confidence)
            .RequestFor(search.Run(), links.Ranking, [], isEverywhere: false);
        Assert.StartsWith("Margin to count on (", shown.Caption, StringComparison.Ordinal);
        string[] lines = [.. places.Output.Split('\n').Select(OneBlank)];
        JsonElement[] found = [.. json.GetProperty("places").EnumerateArray()];
        Assert.Equal(found.Length, shown.Marks.Count(mark => !mark.IsNamed));
        Assert.All(found, place =>
        {
            double marginDb = place.GetProperty("marginAtConfidenceDb").GetDouble(), requiredDb = place.GetProperty("requiredDb").GetDouble();
            string name = place.GetProperty("place").GetString()!, figure = Signed(marginDb, requiredDb);
            Assert.Equal(figure, shown.Marks.Single(mark => mark.Name == name).Figure);
            string cells = $"{(marginDb >= requiredDb ? "" : "! ")}{ShownMargin.Text(marginDb, requiredDb)} {figure} ";
            Assert.Contains(lines, line => line.StartsWith(name["place ".Length..] + " ", StringComparison.Ordinal) && line.Contains(cells, StringComparison.Ordinal));
        });
        foreach (JsonElement rank in links.Root.GetProperty("ranking").EnumerateArray())
        {
            Assert.Equal(
                Signed(rank.GetProperty("marginAtConfidenceDb").GetDouble(), rank.GetProperty("requiredDb").GetDouble()),
                shown.Marks.Single(mark => mark.IsNamed && mark.Name == rank.GetProperty("spot").GetString()).Figure);
        }
    }

    [Theory]
    [MemberData(nameof(Houses))]
    public void In_json_only_the_margin_to_count_on_is_called_margin(string file, string depth, string confidence)
    {
        Links links = LinksOf(file, depth, confidence);
        int seen = 0;
        Look(links.Root);
        Assert.Equal(links.House.Spots.Count, seen);

        void Look(JsonElement element)
        {
            if (element.ValueKind == JsonValueKind.Array)
            {
                foreach (JsonElement item in element.EnumerateArray())
                {
                    Look(item);
                }
            }
            else if (element.ValueKind == JsonValueKind.Object)
            {
                foreach (JsonProperty property in element.EnumerateObject())
                {
                    if (property.Name == "marginAtConfidenceDb" && element.TryGetProperty("weakestSeat", out JsonElement seat))
                    {
                        Link worst = links.Of(element.GetProperty("spot").GetString()!, seat.GetString()!);
                        Assert.Equal(worst.MarginAtConfidenceDb, property.Value.GetDouble());
                        seen++;
                    }

                    Look(property.Value);
                }
            }
        }
    }

    private static string Signed(double marginDb, double requiredDb) => Tenths.Signed(ShownMargin.HeadroomTenths(marginDb, requiredDb));

    private static string OneBlank(string line) => string.Join(' ', line.Split(' ', StringSplitOptions.RemoveEmptyEntries));

    private static void AssertSame(Link link, JsonElement said)
    {
        Assert.Equal((link.Spot, link.Seat), (said.GetProperty("spot").GetString(), said.GetProperty("seat").GetString()));
        Assert.Equal(link.AtConfidence, ShownMargin.Text(said.GetProperty("marginAtConfidenceDb").GetDouble(), link.RequiredDb));
        Assert.Equal(ShownMargin.Text(link.MedianDb), ShownMargin.Text(said.GetProperty("medianDb").GetDouble()));
        Assert.Equal(link.RequiredDb, said.GetProperty("requiredDb").GetDouble());
        Assert.Equal(link.Passes, said.GetProperty("passes").GetBoolean());
        Assert.False(said.TryGetProperty("marginDb", out _));
    }

    private static void AssertSameRank(JsonElement expected, JsonElement said)
    {
        Assert.All(["spot", "weakestSeat"], key => Assert.Equal(expected.GetProperty(key).GetString(), said.GetProperty(key).GetString()));
        Assert.All(["marginAtConfidenceDb", "requiredDb", "headroomDb"], key => Assert.Equal(expected.GetProperty(key).GetDouble(), said.GetProperty(key).GetDouble(), 1e-6));
    }

    private Links LinksOf(string file, string depth, string confidence) =>
        Known.GetOrAdd((file, depth, confidence), _ => new(() => Computed(file, depth, confidence))).Value;

    private Links Computed(string file, string depth, string confidence)
    {
        JsonElement root = Run("compare", file, "--json", "--model", depth, "--confidence", confidence).Json;
        MaterialTables tables = MaterialTablesFile.ReadBuiltIn().Tables!;
        LoadedHouse loaded = HouseLoading.Of(HouseFile.Read(folder.PathOf(file), tables), tables);
        var model = new LinkModel(loaded.House, depth == "direct" ? ModelDepth.Direct : ModelDepth.Full);
        var uncertainty = HouseUncertainty.Of(
            model, loaded.House.Spots, loaded.House.Seats, loaded.Uncertainty, double.Parse(confidence, CultureInfo.InvariantCulture));
        var ranking = Ranking.Of(model, uncertainty.AtConfidence);
        return new Links(root, loaded, model, uncertainty, ranking, CloseCall.Of(model, ranking, uncertainty, loaded.Uncertainty));
    }

    private CommandRun Run(params string[] words) => CommandRun.In(folder.Path, words);

    /// <summary>What <c>compare --json</c> says of a link.</summary>
    private sealed record Link(string Spot, string Seat, double MarginAtConfidenceDb, double MedianDb, double RequiredDb, bool Passes)
    {
        internal string AtConfidence => ShownMargin.Text(MarginAtConfidenceDb, RequiredDb);
    }

    private sealed record Links(JsonElement Root, LoadedHouse Loaded, LinkModel Model, HouseUncertainty Uncertainty, Ranking Ranking, CloseCall Call)
    {
        internal Link[] All { get; } =
        [
            .. Root.GetProperty("links").EnumerateArray().Select(link => new Link(
                link.GetProperty("spot").GetString()!,
                link.GetProperty("seat").GetString()!,
                link.GetProperty("marginAtConfidenceDb").GetDouble(),
                link.GetProperty("medianDb").GetDouble(),
                link.GetProperty("requiredDb").GetDouble(),
                link.GetProperty("passes").GetBoolean())),
        ];

        internal House House => Loaded.House;

        internal Link Of(string spot, string seat) => All.Single(link => link.Spot == spot && link.Seat == seat);
    }
}
