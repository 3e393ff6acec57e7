using LinkMargin.Cli.Commands;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Tables;
using LinkMargin.Plots.Paths;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Pictures;

namespace LinkMargin.Cli.Tests.Commands;

/// <summary>The paths of one link over the plan.</summary>
public sealed class MapPathsTests : IDisposable
{
    private readonly ScratchFolder folder = new();

    public MapPathsTests()
    {
        folder.Put("house.yaml", SampleFile.Text);
        folder.Put("one.yaml", SampleFile.OneLink);
    }

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("full")]
    [InlineData("direct")]
    public void One_picture_of_one_link_is_written_under_its_name(string model)
    {
        CommandRun run = Run("map", "house.yaml", "--paths", "--spot", "loft shelf", "--seat", "sofa", "--model", model);

        Assert.Equal(0, run.ExitCode);
        Assert.Empty(run.Error);
        Assert.Equal(["house-maps/paths-loft-shelf-to-sofa.png", "house.yaml", "one.yaml"], folder.Files);
        PictureFile.AssertSheet(folder.PathOf("house-maps/paths-loft-shelf-to-sofa.png"));
        Assert.Contains("house-maps/paths-loft-shelf-to-sofa.png", run.OutputUnwrapped.Replace('\\', '/'), StringComparison.Ordinal);
    }

    [Fact]
    public void The_json_counts_what_is_drawn_and_what_is_left_out()
    {
        House house = SampleFile.HouseOf(SampleFile.Text);
        LinkBudget budget = LinkEvaluation.Budget(
            new LinkModel(house, ModelDepth.Full, [house.Seats[2]]), house.Spots[0], house.Seats[0]);
        double[] shares = [.. budget.Paths.Select(budget.ShareOf)];

        CommandRun run = Run(
            "map", "house.yaml", "--paths", "--spot", "den rack", "--seat", "sofa", "--json", "--out", "pictures", "--occupied", "desk");

        Assert.Equal("pictures/paths-den-rack-to-sofa.png", run.Json.GetProperty("picture").GetString()!.Replace('\\', '/'));
        Assert.Equal("desk", Assert.Single(run.Json.GetProperty("occupied").EnumerateArray()).GetString());
        Assert.Equal(shares.Count(share => share >= 0.005), run.Json.GetProperty("pathsDrawn").GetInt32());
        Assert.Equal(shares.Count(share => share < 0.005), run.Json.GetProperty("pathsNotDrawn").GetInt32());
        Assert.Equal(shares.Where(share => share < 0.005).Sum(), run.Json.GetProperty("shareNotDrawn").GetDouble(), 1e-12);
    }

    [Fact]
    public void The_list_has_the_numbers_and_words_that_explain_prints()
    {
        HouseParseResult parsed = HouseFile.Read(folder.PathOf("house.yaml"), MaterialTablesFile.ReadBuiltIn().Tables!);
        LoadedHouse loaded = HouseLoading.Of(parsed, MaterialTablesFile.ReadBuiltIn().Tables!);
        var model = new LinkModel(loaded.House);
        var uncertainty = HouseUncertainty.Of(model, loaded.House.Spots, loaded.House.Seats, loaded.Uncertainty);
        var maker = new PathsPictures(loaded, model);
        foreach (Seat seat in loaded.House.Seats)
        {
            PathsRequest request = maker.RequestFor(LinkEvaluation.Budget(model, loaded.House.Spots[0], seat), uncertainty);
            string[] explained =
            [
                .. Run("explain", "house.yaml", "--spot", "den rack", "--seat", seat.Name).Output.Split('\n')
                    .Select(line => string.Join(' ', line.Split(' ', StringSplitOptions.RemoveEmptyEntries))),
            ];

            Assert.NotEmpty(request.Paths);
            Assert.All(request.Paths, entry => Assert.Contains(
                string.Join(' ', new[] { $"{entry.Number}", entry.Words, entry.Length, entry.Loss, entry.ShareText }.Where(t => t.Length > 0)),
                explained));
            Assert.Contains($"total (sum of powers) {request.TotalLoss}", explained);
        }
    }

    [Fact]
    public void What_is_left_out_is_said()
    {
        HouseParseResult parsed = HouseFile.Read(folder.PathOf("house.yaml"), MaterialTablesFile.ReadBuiltIn().Tables!);
        LoadedHouse loaded = HouseLoading.Of(parsed, MaterialTablesFile.ReadBuiltIn().Tables!);
        var model = new LinkModel(loaded.House);
        var uncertainty = HouseUncertainty.Of(model, loaded.House.Spots, loaded.House.Seats, loaded.Uncertainty);
        var maker = new PathsPictures(loaded, model);
        LinkBudget budget = LinkEvaluation.Budget(model, loaded.House.Spots[0], loaded.House.Seats[0]);
        PathBudget strong = budget.Paths[0];
        PathBudget weak = strong with { LossDb = strong.LossDb + 26.98970004336019 }; // 0.2 % of its power

        Assert.Equal("", maker.RequestFor(budget with { Paths = [strong] }, uncertainty).NotDrawn);
        Assert.Equal("Not drawn: 1 path with 0.2 %.", maker.RequestFor(budget with { Paths = [strong, weak] }, uncertainty).NotDrawn);
        Assert.Equal(
            "Not drawn: 2 paths with less than 0.5 % each, 0.4 % together.",
            maker.RequestFor(budget with { Paths = [strong, weak, weak] }, uncertainty).NotDrawn);
    }

    [Fact]
    public void Spot_and_seat_may_be_left_out_where_there_is_one_of_each()
    {
        CommandRun run = Run("map", "one.yaml", "--paths", "--json");

        Assert.Equal(0, run.ExitCode);
        Assert.Equal("den rack", run.Json.GetProperty("spot").GetString());
        Assert.Equal("sofa", run.Json.GetProperty("seat").GetString());
    }

    [Theory]
    [InlineData("--paths draws one link; choose it with --spot: 'den rack', 'loft shelf'; and --seat: 'sofa', 'bench', 'desk'", "--paths")]
    [InlineData("the house has 3 seats; choose one with --seat: 'sofa', 'bench', 'desk'", "--paths", "--spot", "den rack")]
    [InlineData("the house has 2 spots; choose one with --spot: 'den rack', 'loft shelf'", "--paths", "--seat", "desk")]
    [InlineData("there is no seat 'dask'; did you mean 'desk'?", "--paths", "--spot", "den rack", "--seat", "dask")]
    [InlineData("--paths draws one link on every level it touches; omit --level", "--paths", "--level", "den")]
    [InlineData("--paths draws one link on every level it touches; omit --csv", "--paths", "--csv")]
    [InlineData("a map shows every seat of its level; add --paths to draw one link, or omit --seat", "--seat", "desk")]
    [InlineData("there is no option '--path' for 'linkmargin map'; did you mean '--paths'?", "--path")]
    public void A_slip_gets_one_sentence_and_writes_nothing(string sentence, params string[] options)
    {
        CommandRun run = Run(["map", "house.yaml", .. options]);

        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Equal($"linkmargin: {sentence}\n", run.Error);
        Assert.Equal(["house.yaml", "one.yaml"], folder.Files);
    }

    [Fact]
    public void A_file_that_this_program_did_not_write_is_kept()
    {
        Directory.CreateDirectory(folder.PathOf("one-maps"));
        folder.Put("one-maps/paths-den-rack-to-sofa.png", "mine");

        CommandRun run = Run("map", "one.yaml", "--paths");

        Assert.Equal(2, run.ExitCode);
        Assert.Equal("mine", File.ReadAllText(folder.PathOf("one-maps/paths-den-rack-to-sofa.png")));
        Assert.Equal(0, Run("map", "one.yaml", "--paths", "--force").ExitCode);
        Assert.NotEqual("mine", File.ReadAllText(folder.PathOf("one-maps/paths-den-rack-to-sofa.png")));
    }

    private CommandRun Run(params string[] words) => CommandRun.In(folder.Path, words);
}
