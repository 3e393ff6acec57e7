using System.Text.Json;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Cli.Tests.Options;

/// <summary>People on other seats, from the words typed to what is told.</summary>
public sealed class OccupiedOptionTests : IDisposable
{
    // Two seats behind one another look at the console; a third does not say where it faces.
    private const string House =
        """
        house: Row House
        units: m
        levels:
          - name: den
            height: 2.4
            outer: brick-215
            inner: drywall-stud
            rooms:
              - {name: games den, corner: [0, 0], size: [8, 5]}
        radios: {console: console-typical, controller: controller-typical}
        spots:
          - {name: shelf, level: den, at: [0.5, 2.5, 0.8]}
        seats:
          - {name: front sofa, level: den, at: [3.5, 2.5], hands: 0.7, facing: west}
          - {name: back sofa, level: den, at: [6.5, 2.5], hands: 0.7, facing: west}
          - {name: stool, level: den, at: [6.5, 0.6], hands: 0.7}

        """;

    private readonly ScratchFolder folder = new();

    public OccupiedOptionTests() => folder.Put("row.yaml", House);

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("full")]
    [InlineData("direct")]
    public void Somebody_in_front_lowers_the_margin_and_the_json_says_who(string model)
    {
        JsonElement empty = Run("explain", "row.yaml", "--seat", "back sofa", "--json", "--model", model).Json;
        JsonElement occupied = Run(
            "explain", "row.yaml", "--seat", "back sofa", "--json", "--model", model, "--occupied", "front sofa").Json;

        Assert.True(occupied.GetProperty("tableMedianDb").GetDouble() < empty.GetProperty("tableMedianDb").GetDouble() - 1);
        Assert.Equal([], Words(empty));
        Assert.Equal(["front sofa"], Words(occupied));
        Assert.Contains(Crossings(occupied), c => c is ("player", "player at front sofa"));
        Assert.DoesNotContain(Crossings(empty), c => c.What == "player");
    }

    [Fact]
    public void The_margin_is_that_of_the_engine_with_the_same_people()
    {
        House house = SampleFile.HouseOf(House);
        var model = new LinkModel(house, ModelDepth.Full, [house.Seats[0], house.Seats[1]]);
        LinkBudget budget = LinkEvaluation.Budget(model, house.Spots[0], house.Seats[2]);

        CommandRun run = Run("explain", "row.yaml", "--seat", "stool", "--json", "--occupied", "front sofa", "back sofa");

        Assert.Equal(budget.MarginDb, run.Json.GetProperty("tableMedianDb").GetDouble());
        Assert.Equal(["front sofa", "back sofa"], Words(run.Json));
    }

    [Fact]
    public void All_is_every_seat_named_and_none_is_the_default()
    {
        string[] explain = ["explain", "row.yaml", "--seat", "stool"];
        string[] compare = ["compare", "row.yaml"];
        foreach (string[] command in (string[][])[explain, compare, [.. explain, "--json"], [.. compare, "--json"]])
        {
            string all = Run([.. command, "--occupied", "all"]).Output, plain = Run(command).Output;
            Assert.Equal(all, Run([.. command, "--occupied", "front sofa", "back sofa"]).Output);
            Assert.Equal(plain, Run([.. command, "--occupied", "none"]).Output);
            Assert.NotEqual(plain, all);
        }
    }

    [Fact]
    public void Nobody_stands_in_the_way_of_his_own_link() => Assert.Equal(
        Run("explain", "row.yaml", "--seat", "front sofa").Output,
        Run("explain", "row.yaml", "--seat", "front sofa", "--occupied", "front sofa").Output);

    [Fact]
    public void Each_command_says_who_sits_there()
    {
        string[] people = ["--occupied", "back sofa", "front sofa"];

        Assert.Contains("With people on 'front sofa'.", Run(["explain", "row.yaml", "--seat", "back sofa", .. people]).Output, StringComparison.Ordinal);
        Assert.Contains("With people on 'back sofa' and 'front sofa', who", Run(["compare", "row.yaml", .. people]).OutputUnwrapped, StringComparison.Ordinal);
        JsonElement compared = Run(["compare", "row.yaml", "--json", .. people]).Json;
        Assert.Equal(["back sofa", "front sofa"], Words(compared));
        Assert.Equal(["back sofa"], Words(compared.GetProperty("links")[0]));
        Assert.Equal(
            ["back sofa", "front sofa"], Words(Run(["map", "row.yaml", "--json", "--cell", "1", "--model", "direct", .. people]).Json));
    }

    [Fact]
    public void A_map_with_people_is_another_map()
    {
        string[] map = ["map", "row.yaml", "--json", "--cell", "0.5", "--model", "direct"];

        double empty = Run([.. map, "--out", "a"]).Json.GetProperty("maps")[0].GetProperty("lowestMarginAtConfidenceDb").GetDouble();
        double occupied = Run([.. map, "--out", "b", "--occupied", "all"]).Json.GetProperty("maps")[0].GetProperty("lowestMarginAtConfidenceDb").GetDouble();

        Assert.True(occupied < empty - 1);
    }

    [Fact]
    public void A_seat_that_does_not_say_where_it_faces_is_reported_once_where_it_was_named()
    {
        CommandRun named = Run("explain", "row.yaml", "--seat", "back sofa", "--json", "--occupied", "stool", "front sofa", "stool");
        CommandRun among = Run("explain", "row.yaml", "--seat", "back sofa", "--json", "--occupied", "all");

        Assert.Equal(["front sofa"], Words(named.Json));
        Assert.Equal(
            "'stool' has no 'facing', so nobody is placed on it; add 'facing' to the seat in the house file\n", named.Error);
        Assert.Equal(["front sofa"], Words(among.Json));
        Assert.Empty(among.Error);
    }

    [Theory]
    [InlineData("there is no seat 'front sofaa' for --occupied; did you mean 'front sofa'?", "row.yaml", "--occupied", "front sofaa")]
    [InlineData("there is no seat 'al' for --occupied; did you mean 'all'?", "row.yaml", "--occupied", "al")]
    [InlineData("there is no seat 'attic' for --occupied; write one of: front sofa, back sofa, stool, all, none", "row.yaml", "--occupied", "stool", "attic")]
    [InlineData("--occupied takes either 'all' alone or names of seats", "row.yaml", "--occupied", "stool", "all")]
    [InlineData("there is no option '--jsn' for 'linkmargin compare'; did you mean '--json'?", "row.yaml", "--occupied", "stool", "--jsn")]
    [InlineData("'linkmargin compare' needs HOUSE: the house file, such as house.yaml, or a bundle (.zip); put it before --occupied, which takes all following words", "--occupied", "all", "row.yaml")]
    public void A_slip_gets_one_sentence(string sentence, params string[] words)
    {
        CommandRun run = Run(["compare", .. words]);

        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.EndsWith($"linkmargin: {sentence}\n", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_option_alone_is_reported_what_it_needs()
    {
        CommandRun run = Run("compare", "row.yaml", "--occupied");

        Assert.Equal(2, run.ExitCode);
        Assert.StartsWith("linkmargin: --occupied needs all|none|SEAT... after it: ", run.Error, StringComparison.Ordinal);
    }

    private static string[] Words(JsonElement document) => [.. document.GetProperty("occupied").EnumerateArray().Select(word => word.GetString()!)];

    private static IEnumerable<(string What, string Name)> Crossings(JsonElement budget) => budget.GetProperty("paths").EnumerateArray()
        .SelectMany(path => path.GetProperty("crossings").EnumerateArray())
        .Select(c => (c.GetProperty("kind").GetString()!, c.GetProperty("name").GetString()!));

    private CommandRun Run(params string[] words) => CommandRun.In(folder.Path, words);
}
