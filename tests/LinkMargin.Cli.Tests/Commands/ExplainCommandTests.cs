using System.Text.Json;
using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Words;

namespace LinkMargin.Cli.Tests.Commands;

public sealed class ExplainCommandTests : IDisposable
{
    private readonly ScratchFolder folder = new();

    public ExplainCommandTests()
    {
        folder.Put("house.yaml", SampleFile.Text);
        folder.Put("one.yaml", SampleFile.OneLink);
    }

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("full", ModelDepth.Full)]
    [InlineData("direct", ModelDepth.Direct)]
    public void The_json_of_every_link_holds_the_engines_figures(string word, ModelDepth depth)
    {
        House house = SampleFile.HouseOf(SampleFile.Text);
        var model = new LinkModel(house, depth);
        foreach (Spot spot in house.Spots)
        {
            foreach (Seat seat in house.Seats)
            {
                LinkBudget budget = LinkEvaluation.Budget(model, spot, seat);
                CommandRun run = Run("explain", "house.yaml", "--spot", spot.Name, "--seat", seat.Name, "--json", "--model", word);

                var uncertainty = HouseUncertainty.Of(model, [spot], [seat], new UncertaintyBasis(MaterialTablesFile.ReadBuiltIn().Tables!.Spreads!));
                Assert.Equal(uncertainty.AtConfidence.Passes(budget) ? 0 : 1, run.ExitCode);
                Assert.Equal(uncertainty.MarginAtConfidenceDb(budget), run.Json.GetProperty("marginAtConfidenceDb").GetDouble());
                Assert.Equal(uncertainty.With(budget).MedianDb, run.Json.GetProperty("medianDb").GetDouble());
                Assert.Equal(uncertainty.ProbabilityPasses(budget), run.Json.GetProperty("probabilityPasses").GetDouble());
                Assert.Equal("Test Cottage", run.Json.GetProperty("house").GetString());
                Assert.Equal(budget.MarginDb, run.Json.GetProperty("tableMedianDb").GetDouble());
                Assert.Equal(uncertainty.AtConfidence.Passes(budget), run.Json.GetProperty("passes").GetBoolean());
                JsonElement[] paths = [.. run.Json.GetProperty("paths").EnumerateArray()];
                Assert.Equal(budget.Paths.Select(p => p.LossDb), paths.Select(p => p.GetProperty("lossDb").GetDouble()));
                Assert.All(paths, path => Assert.Equal(path.GetProperty("lossDb").GetDouble(), PartsOf(path).Sum(), 1e-9));
            }
        }
    }

    [Fact]
    public void The_full_model_is_used_where_none_is_named() => Assert.Equal(
        Run("explain", "house.yaml", "--spot", "den rack", "--seat", "sofa", "--json", "--model", "full").Output,
        Run("explain", "house.yaml", "--spot", "den rack", "--seat", "sofa", "--json").Output);

    [Fact]
    public void Who_wants_to_be_surer_can_count_on_less()
    {
        double half = CountedAt("0.5"), nine = CountedAt("90%"), most = CountedAt("0.99");
        Assert.True(half > nine && nine > most);
        Assert.Contains("with 99 % confidence the margin is at least", Run("explain", "house.yaml", "--spot", "den rack", "--seat", "sofa", "--confidence", "0.99").OutputUnwrapped, StringComparison.Ordinal);

        double CountedAt(string share) => Run(
            "explain", "house.yaml", "--spot", "den rack", "--seat", "sofa", "--json", "--confidence", share).Json.GetProperty("marginAtConfidenceDb").GetDouble();
    }

    [Fact]
    public void A_seat_that_is_met_ends_with_0_and_one_that_is_not_with_1()
    {
        CommandRun met = Run("explain", "house.yaml", "--spot", "den rack", "--seat", "sofa");
        CommandRun unmet = Run("explain", "house.yaml", "--spot", "den rack", "--seat", "bench");

        Assert.Equal(0, met.ExitCode);
        Assert.Contains("passes. Probability that it passes: >99 %.", met.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Equal(1, unmet.ExitCode);
        Assert.Contains("does not pass. Probability that it passes: <1 %.", unmet.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Empty(met.Error + unmet.Error);
    }

    [Fact]
    public void Every_way_is_listed_with_its_share_and_the_caution_stands_at_the_end()
    {
        House house = SampleFile.HouseOf(SampleFile.Text);
        LinkBudget budget = LinkEvaluation.Budget(new LinkModel(house), house.Spots[0], house.Seats[2]);

        CommandRun run = Run("explain", "house.yaml", "--spot", "den rack", "--seat", "desk");

        string[] lines = run.Output.Split('\n');
        for (int i = 1; i <= budget.Paths.Count; i++)
        {
            Assert.Contains(lines, line => line.TrimStart().StartsWith($"{i}  ", StringComparison.Ordinal) && line.EndsWith(" %", StringComparison.Ordinal));
        }

        Assert.EndsWith(Cautions.Estimates, run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.All(lines, line => Assert.InRange(line.Length, 0, Invocation.PlainWidth));
    }

    [Fact]
    public void Every_crossing_says_what_its_loss_rests_on_and_the_legend_what_that_means()
    {
        CommandRun run = Run("explain", "house.yaml", "--spot", "den rack", "--seat", "desk");
        CommandRun json = Run("explain", "house.yaml", "--spot", "den rack", "--seat", "desk", "--json");
        JsonElement[] crossings =
        [
            .. json.Json.GetProperty("paths").EnumerateArray().SelectMany(path => path.GetProperty("crossings").EnumerateArray()),
        ];

        Assert.Contains(crossings, c => c.GetProperty("kind").GetString() == "joists" && c.GetProperty("basis").GetString() == "joists");
        Assert.Contains(crossings, c => c.GetProperty("kind").GetString() == "floor" && c.GetProperty("basis").GetString() == "head-on");
        Assert.Contains("head-on, table loss head-on; the layers give the change with angle", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("joists, transmission through and between the joists, by the share", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.DoesNotContain("through, loss", run.OutputUnwrapped, StringComparison.Ordinal);
    }

    [Fact]
    public void A_way_thrown_back_says_where_and_by_what()
    {
        CommandRun run = Run("explain", "house.yaml", "--spot", "den rack", "--seat", "sofa");
        JsonElement json = Run("explain", "house.yaml", "--spot", "den rack", "--seat", "sofa", "--json").Json;

        Assert.Contains("reflected by the floor of den", run.Output, StringComparison.Ordinal);
        JsonElement turn = Assert.Single(
            json.GetProperty("paths").EnumerateArray().SelectMany(path => path.GetProperty("turns").EnumerateArray()),
            turn => turn.GetProperty("kind").GetString() == "floor");
        Assert.Equal(("den", "den"), (turn.GetProperty("name").GetString(), turn.GetProperty("level").GetString()));
        Assert.InRange(turn.GetProperty("incidenceDeg").GetDouble(), 1, 89);
    }

    [Fact]
    public void Spot_and_seat_may_be_left_out_where_there_is_one_of_each() => Assert.Equal(
        Run("explain", "one.yaml", "--spot", "den rack", "--seat", "sofa").Output,
        Run("explain", "one.yaml").Output);

    [Theory]
    [InlineData("there is no spot 'den rak'; did you mean 'den rack'?", "--spot", "den rak", "--seat", "sofa")]
    [InlineData("there is no spot 'Den Rack'; did you mean 'den rack'?", "--spot", "Den Rack", "--seat", "sofa")]
    [InlineData("there is no seat 'sofaa'; did you mean 'sofa'?", "--spot", "den rack", "--seat", "sofaa")]
    [InlineData("there is no spot 'kitchen'; write one of: den rack, loft shelf", "--spot", "kitchen", "--seat", "sofa")]
    [InlineData("the house has 2 spots; choose one with --spot: 'den rack', 'loft shelf'", "--seat", "sofa")]
    [InlineData("the house has 3 seats; choose one with --seat: 'sofa', 'bench', 'desk'", "--spot", "den rack")]
    [InlineData("there is no option '--spto' for 'linkmargin explain'; did you mean '--spot'?", "--spto", "den rack")]
    [InlineData("there is no model 'fulll' for --model; did you mean 'full'?", "--model", "fulll")]
    public void A_slip_gets_one_sentence(string sentence, params string[] options)
    {
        CommandRun run = Run(["explain", "house.yaml", .. options]);

        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Equal($"linkmargin: {sentence}\n", run.Error);
    }

    [Fact]
    public void A_missing_file_a_folder_and_a_missing_argument_get_one_sentence_each()
    {
        foreach (string[] words in (string[][])[["explain", "nowhere.yaml"], ["explain", "."], ["explain"], ["explain", ""]])
        {
            CommandRun run = Run(words);

            Assert.Equal(2, run.ExitCode);
            Assert.Empty(run.Output);
            Assert.InRange(run.Error.TrimEnd().Split('\n').Length, 1, 2);
            Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
            Assert.DoesNotContain("unexpected", run.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Mistakes_of_the_file_are_all_reported_on_the_error_stream()
    {
        folder.Put("bad.yaml", SampleFile.Text.Replace("drywall-stud", "drywal-stud", StringComparison.Ordinal));

        CommandRun run = Run("explain", "bad.yaml", "--json");

        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Contains("bad.yaml:7:", run.Error, StringComparison.Ordinal);
        Assert.Contains("bad.yaml:15:", run.Error, StringComparison.Ordinal);
        Assert.Contains("did you mean 'drywall-stud'?", run.Error, StringComparison.Ordinal);
        Assert.EndsWith("bad.yaml: 2 errors (above). Fix them and run again\n", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_house_without_seats_or_spots_says_what_to_add()
    {
        folder.Put("empty.yaml", SampleFile.Text[..SampleFile.Text.IndexOf("spots:", StringComparison.Ordinal)]);

        foreach (string command in (string[])["explain", "compare", "map"])
        {
            CommandRun run = Run(command, "empty.yaml");

            Assert.Equal(2, run.ExitCode);
            Assert.EndsWith("linkmargin: the house has no spot; add one under 'spots:' in the house file\n", run.Error, StringComparison.Ordinal);
        }
    }

    private static IEnumerable<double> PartsOf(JsonElement path)
    {
        string[] parts = ["freeSpaceDb", "edgesDb", "reflectionDb", "diffractionDb", "diffuseDb", "bodyDb"];
        return parts.Select(part => path.GetProperty(part).GetDouble())
            .Concat(path.GetProperty("crossings").EnumerateArray().Select(c => c.GetProperty("lossDb").GetDouble()));
    }

    private CommandRun Run(params string[] words) => CommandRun.In(folder.Path, words);
}
