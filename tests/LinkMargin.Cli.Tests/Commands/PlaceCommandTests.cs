using System.Text.Json;
using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Cli.Tests.Commands;

public sealed class PlaceCommandTests : IDisposable
{
    private const string Zones = "zones:\n  - {name: loft ledge, level: loft, corner: [0.5, 4.5], size: [3, 0.3], heights: [0.4, 1.4]}\n";

    private readonly ScratchFolder folder = new();

    public PlaceCommandTests()
    {
        folder.Put("house.yaml", SampleFile.Modest);
        folder.Put("zones.yaml", SampleFile.Modest + Zones);
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public void The_margin_reported_is_that_of_a_spot_put_there()
    {
        JsonElement root = Run("place", "house.yaml", "--json", "--grid", "0.8").Json;

        House house = SampleFile.HouseOf(SampleFile.Modest);
        JsonElement best = root.GetProperty("places")[0];
        var spot = new Spot(
            "there",
            house.Levels.ToList().FindIndex(l => l.Name == best.GetProperty("level").GetString()),
            new Point2(best.GetProperty("xM").GetDouble(), best.GetProperty("yM").GetDouble()),
            best.GetProperty("heightM").GetDouble());
        var model = new LinkModel(house);
        var uncertainty = HouseUncertainty.Of(model, [spot], house.Seats, new UncertaintyBasis(Files.Tables.MaterialTablesFile.ReadBuiltIn().Tables!.Spreads!));
        var score = new SpotScore(spot, LinkEvaluation.Budgets(model, spot, house.Seats), uncertainty.AtConfidence);
        Assert.Equal(
            (score.Weakest.Seat.Name, uncertainty.MarginAtConfidenceDb(score.Weakest)),
            (best.GetProperty("weakestSeat").GetString(), best.GetProperty("marginAtConfidenceDb").GetDouble()));
        Assert.Equal(uncertainty.ProbabilityAllPass(score.Budgets), best.GetProperty("probabilityAllPass").GetDouble(), 1e-12);
        Assert.True(root.GetProperty("bestSpot").GetProperty("headroomDb").GetDouble() <= score.WeakestHeadroomDb);
        Assert.InRange(root.GetProperty("places").GetArrayLength(), 2, 5);
    }

    [Fact]
    public void A_table_a_line_for_the_file_and_a_map_beside_it()
    {
        CommandRun run = Run("place", "house.yaml", "--grid", "1", "--model", "direct", "--confidence", "0.5");

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("Every seat passes there. Place 1 is ", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("the best spot in the file, '", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("Map of the choice (margin to count on): house-places.png", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("house-places.png", folder.Files);
        Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.Length, 0, 80));

        // The line it gives can be pasted into the house file, and the house can be compared with it.
        string line = Assert.Single(run.Output.Split('\n'), l => l.StartsWith("  - {name: place 1,", StringComparison.Ordinal));
        folder.Put("with.yaml", SampleFile.Modest.Replace("spots:\n", $"spots:\n{line}\n", StringComparison.Ordinal));
        Assert.Equal("place 1", Run("compare", "with.yaml", "--model", "direct", "--confidence", "0.5", "--json").Json.GetProperty("choice").GetProperty("spot").GetString());
    }

    [Fact]
    public void Zones_are_searched_where_there_are_any_unless_it_is_to_look_everywhere()
    {
        JsonElement zones = Run("place", "zones.yaml", "--json", "--model", "direct").Json, all = Run("place", "zones.yaml", "--everywhere", "--height", "1", "--json", "--grid", "1", "--model", "direct").Json;
        Assert.All(zones.GetProperty("places").EnumerateArray(), place => Assert.Equal("loft ledge", place.GetProperty("where").GetString()));
        Assert.Equal(2 * 30 * 3, zones.GetProperty("candidates").GetInt32());
        Assert.Contains(all.GetProperty("places").EnumerateArray(), place => place.GetProperty("where").GetString() != "loft ledge");
        Assert.All(all.GetProperty("places").EnumerateArray(), place => Assert.Equal(1, place.GetProperty("heightM").GetDouble()));
    }

    [Fact]
    public void A_seat_short_at_every_place_ends_with_1()
    {
        folder.Put("much.yaml", SampleFile.Text);
        CommandRun run = Run("place", "much.yaml", "--grid", "2", "--model", "direct");
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("No place works for every seat.", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_searched_is_said_and_nothing_is_written()
    {
        folder.Put("kept.yaml", SampleFile.Modest + "keep-out:\n  - {name: a, level: loft, room: studio}\n  - {name: b, level: den, room: games den}\n  - {name: c, level: den, room: passage}\n");
        folder.Put("kept-zone.yaml", SampleFile.Modest + Zones + "keep-out:\n  - {name: a, level: loft, room: studio}\n");
        folder.Put("own.yaml", SampleFile.Modest.Replace("hands: 0.7,", "plays: den rack, hands: 0.7,", StringComparison.Ordinal).Replace("hands: 0.75,", "plays: den rack, hands: 0.75,", StringComparison.Ordinal));
        (string[] Words, string Fault)[] faults =
        [
            (["place", "kept.yaml"], "there is no free floor for a console; change 'keep-out', or choose another --height or a smaller --grid"),
            (["place", "kept-zone.yaml"], "no zone has room for a console"),
            (["place", "own.yaml"], "every seat already plays a console at a named spot"),
            (["place", "house.yaml", "--level", "lfot"], "there is no level 'lfot'; did you mean 'loft'?"),
            (["place", "house.yaml", "--grid", "3"], "--grid '3' is 3 m, but 0.05 m to 2 m is allowed"),
            (["place", "house.yaml", "--grid", "1e-9"], "--grid '1e-9' is 1e-9 m, but 0.05 m to 2 m is allowed"),
            (["place", "house.yaml", "--grid", "1e308"], "--grid '1e308' is 1e308 m, but 0.05 m to 2 m is allowed"),
            (["place", "house.yaml", "--height", "1e308"], "--height '1e308' is 1e308 m, but 0 m to 5 m is allowed"),
            (["place", "house.yaml", "--height", "-1e-9"], "--height '-1e-9' is -1e-9 m, but 0 m to 5 m is allowed"),
            (["place", "house.yaml", "--height", "x"], "--height 'x' is not a length"),
        ];
        Assert.All(faults, fault =>
        {
            CommandRun run = Run(fault.Words);
            Assert.Equal(2, run.ExitCode);
            Assert.StartsWith($"linkmargin: {fault.Fault}", run.Error, StringComparison.Ordinal);
        });
        Assert.DoesNotContain(folder.Files, file => file.EndsWith(".png", StringComparison.Ordinal));
    }

    [Fact]
    public void Asked_to_stop_it_stops_and_writes_nothing()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        StringWriter output = new(), error = new();
        int exitCode = CommandLineProgram.Run(["place", "house.yaml"], new Invocation(output, error, folder.Path) { Cancellation = stop.Token });
        Assert.Equal(130, exitCode);
        Assert.Contains("stopped; no file was left half-written", error.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("house-places.png", folder.Files);
    }

    private CommandRun Run(params string[] words) => CommandRun.In(folder.Path, words);
}
