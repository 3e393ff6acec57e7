using System.Text.Json;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Cli.Tests.Commands;

public sealed class CheckCommandTests : IDisposable
{
    private readonly ScratchFolder folder = new();

    public CheckCommandTests() => folder.Put("house.yaml", SampleFile.Text);

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_sound_house_ends_with_0_and_its_plan_is_drawn_beside_it()
    {
        CommandRun run = Run("check", "house.yaml");

        Assert.Equal(0, run.ExitCode);
        Assert.Empty(run.Error);
        Assert.StartsWith("house.yaml: no errors. Test Cottage contains:\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("games den 20.0", run.Output, StringComparison.Ordinal);
        Assert.Contains("Plan: house-plan.png", run.Output, StringComparison.Ordinal);
        Assert.Equal(["house-plan.png", "house.yaml"], folder.Files);
    }

    [Fact]
    public void The_plan_can_go_elsewhere()
    {
        Assert.Equal(0, Run("check", "house.yaml", "--out", "drawings/new").ExitCode);
        Assert.Contains("drawings/new/house-plan.png", folder.Files);
    }

    [Fact]
    public void The_json_tells_what_was_read()
    {
        House house = SampleFile.HouseOf(SampleFile.Text);

        JsonElement root = Run("check", "house.yaml", "--json").Json;

        Assert.Equal(0, root.GetProperty("errors").GetInt32());
        Assert.Equal(house.Spots.Select(s => s.Name), root.GetProperty("spots").EnumerateArray().Select(s => s.GetString()!));
        Assert.Equal(house.Seats.Select(s => s.Name), root.GetProperty("seats").EnumerateArray().Select(s => s.GetString()!));
        Assert.Equal(
            house.Levels.Select(l => (l.Name, l.ElevationMetres, l.Walls.Count, l.Rooms.Count)),
            root.GetProperty("levels").EnumerateArray().Select(l => (
                l.GetProperty("name").GetString()!,
                l.GetProperty("elevationM").GetDouble(),
                l.GetProperty("walls").GetInt32(),
                l.GetProperty("rooms").GetArrayLength())));
        Assert.Equal("house-plan.png", root.GetProperty("plan").GetString());
    }

    [Fact]
    public void Every_mistake_is_reported_at_once_with_its_place_and_nothing_is_drawn()
    {
        folder.Put("bad.yaml", SampleFile.Text
            .Replace("height: 2.4", "height: -2.4", StringComparison.Ordinal)
            .Replace("timber-joist-225", "timber-joist-226", StringComparison.Ordinal)
            .Replace("seats:", "sseats:", StringComparison.Ordinal));

        CommandRun run = Run("check", "bad.yaml"), json = Run("check", "bad.yaml", "--json");

        Assert.Equal(2, run.ExitCode);
        foreach (string place in (string[])["bad.yaml:5:", "bad.yaml:11:", "bad.yaml:22:"])
        {
            Assert.Contains(run.Output.Split('\n'), line => line.StartsWith(folder.PathOf(place), StringComparison.Ordinal));
        }

        Assert.Contains("did you mean 'timber-joist-225'?", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("did you mean 'seats'?", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("bad.yaml: 3 errors", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Equal(2, json.ExitCode);
        Assert.Equal(3, json.Json.GetProperty("errors").GetInt32());
        Assert.Equal(
            [5, 11, 22],
            json.Json.GetProperty("problems").EnumerateArray()
                .Where(p => p.GetProperty("severity").GetString() == "error")
                .Select(p => p.GetProperty("line").GetInt32()));
        Assert.Equal(["bad.yaml", "house.yaml"], folder.Files);
    }

    [Fact]
    public void What_looks_odd_is_reported_but_does_not_stop()
    {
        folder.Put("odd.yaml", SampleFile.Text.Replace("at: [3, 2]", "at: [4, 2]", StringComparison.Ordinal));

        CommandRun run = Run("check", "odd.yaml");

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("odd.yaml:23:", run.Output, StringComparison.Ordinal);
        Assert.Contains("is inside the wall", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("odd.yaml: no errors, 1 warning.", run.Output, StringComparison.Ordinal);
        Assert.Contains("odd-plan.png", folder.Files);
    }

    [Theory]
    [InlineData("missing.yaml")]
    [InlineData(".")]
    [InlineData("empty.yaml")]
    [InlineData("picture.yaml")]
    public void What_is_no_house_file_is_said_to_be_none(string file)
    {
        folder.Put("empty.yaml", "");
        File.WriteAllBytes(folder.PathOf("picture.yaml"), [0x89, (byte)'P', (byte)'N', (byte)'G', 0, 1, 2, 3]);

        CommandRun run = Run("check", file);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("1 error", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Output + run.Error, StringComparison.Ordinal);
        Assert.Empty(run.Error);
    }

    [Fact]
    public void A_plan_that_somebody_else_drew_is_left_alone_and_the_check_is_still_reported()
    {
        folder.Put("house-plan.png", "mine");

        CommandRun run = Run("check", "house.yaml");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("house-plan.png", run.Error, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(folder.PathOf("house-plan.png")));
    }

    private CommandRun Run(params string[] words) => CommandRun.In(folder.Path, words);
}
