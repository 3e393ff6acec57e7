using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Resources;
using LinkMargin.Files.Tables;

namespace LinkMargin.Cli.Tests.Commands;

public sealed class DemoCommandTests : IDisposable
{
    private readonly ScratchFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void The_demonstration_leaves_house_plan_maps_and_sheet_and_its_figures_are_the_engines()
    {
        var model = new LinkModel(SampleFile.HouseOf(DemoHouse.Text), ModelDepth.Direct);
        var uncertainty = HouseUncertainty.Of(
            model, model.House.Spots, model.House.Seats, new UncertaintyBasis(MaterialTablesFile.ReadBuiltIn().Tables!.Spreads!));
        Ranking ranking = Ranking.Of(model, uncertainty.AtConfidence);

        CommandRun run = CommandRun.In(folder.Path, "demo", "--out", "demo", "--model", "direct", "--json");

        Assert.Equal(0, run.ExitCode);
        Assert.Empty(run.Error);
        Assert.Equal(
            ranking.Scores.Select(s => s.Spot.Name),
            run.Json.GetProperty("comparison").GetProperty("ranking").EnumerateArray().Select(r => r.GetProperty("spot").GetString()!));
        Assert.Equal(ranking.Scores[0].Spot.Name, run.Json.GetProperty("budget").GetProperty("spot").GetString());
        Assert.Equal(ranking.Scores[0].Weakest.Seat.Name, run.Json.GetProperty("budget").GetProperty("seat").GetString());
        Assert.Equal(ranking.Scores[0].Weakest.MarginDb, run.Json.GetProperty("budget").GetProperty("tableMedianDb").GetDouble());
        Assert.Equal(
            model.House.Spots.Count * model.House.Levels.Count, run.Json.GetProperty("maps").GetProperty("maps").GetArrayLength());
        string[] named =
        [
            run.Json.GetProperty("houseFile").GetString()!,
            run.Json.GetProperty("measurementsFile").GetString()!,
            run.Json.GetProperty("plan").GetString()!,
            run.Json.GetProperty("comparison").GetProperty("picture").GetString()!,
            run.Json.GetProperty("maps").GetProperty("sheet").GetString()!,
            .. run.Json.GetProperty("maps").GetProperty("maps").EnumerateArray().Select(m => m.GetProperty("picture").GetString()!),
            Path.Combine("demo", HouseSchema.FileName),
        ];
        Assert.Equal(folder.Files, named.Select(f => f.Replace('\\', '/')).Order(StringComparer.Ordinal));
        Assert.Equal(DemoHouse.Text, File.ReadAllText(folder.PathOf(named[0])));
    }

    [Fact]
    public void A_house_file_that_somebody_has_changed_is_left_alone()
    {
        Directory.CreateDirectory(folder.PathOf("demo"));
        folder.Put("demo/tern-terrace.yaml", DemoHouse.Text + "# my own remark\n");

        CommandRun run = CommandRun.In(folder.Path, "demo", "--out", "demo");

        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Equal(["demo/tern-terrace.yaml"], folder.Files);
    }

    [Fact]
    public void A_file_where_the_folder_should_be_gets_one_sentence()
    {
        folder.Put("demo", "a file");

        CommandRun run = CommandRun.In(folder.Path, "demo", "--out", "demo");

        Assert.Equal(2, run.ExitCode);
        Assert.Single(run.Error.TrimEnd().Split('\n'));
    }
}
