using System.Text.Json;

namespace LinkMargin.Cli.Tests.Commands;

public sealed class ImproveCommandTests : IDisposable
{
    private const string Rack = "fixtures:\n  - {name: rack, level: den, box: [0.2, 0.2, 0.8, 0.8], to: 1.6, material: sheet-steel, shell: true}\n";

    private readonly ScratchFolder folder = new();

    public ImproveCommandTests()
    {
        folder.Put("house.yaml", SampleFile.Modest + Rack);
        folder.Put("much.yaml", SampleFile.Text.Replace("required: 15 dB", "required: 60 dB", StringComparison.Ordinal)); // two seats ask too much
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_stated_gain_is_what_the_same_edit_gives_to_compare()
    {
        JsonElement root = Run("improve", "house.yaml", "--spot", "den rack", "--json", "--model", "direct").Json;
        JsonElement lead = root.GetProperty("remedies").EnumerateArray().First(r => r.GetProperty("actions")[0].GetString()!.StartsWith("receiver on a 1 m lead", StringComparison.Ordinal));

        // receiver on a 1 m lead, at (x, y), 1.50 m up in 'room'
        string[] figures = [.. System.Text.RegularExpressions.Regex.Matches(lead.GetProperty("actions")[0].GetString()!, "[0-9]+[.][0-9]+").Select(match => match.Value)];
        JsonElement compared = Run("compare", "house.yaml", "--json", "--model", "direct", "--what-if", $"move spot den rack to {string.Join(' ', figures)}").Json;
        double before = WorstToCountOn(compared.GetProperty("asWritten")), after = WorstToCountOn(compared);

        // The phrase gives the place to a centimetre.
        Assert.Equal(after - before, lead.GetProperty("gainDb").GetDouble(), 0.05);
        Assert.Equal(before, root.GetProperty("before").GetProperty("headroomDb").GetDouble(), 1e-9);

        static double WorstToCountOn(JsonElement comparison) => comparison.GetProperty("links").EnumerateArray()
            .Where(link => link.GetProperty("spot").GetString() == "den rack")
            .Min(link => link.GetProperty("marginAtConfidenceDb").GetDouble() - link.GetProperty("requiredDb").GetDouble());
    }

    [Fact]
    public void A_table_with_what_each_asks_for_and_what_to_mind()
    {
        CommandRun run = Run("improve", "house.yaml", "--spot", "den rack");

        Assert.Contains("'rack' left open", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("A metal rack may be earthed through its panels: ask a licensed electrician", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("These are planning estimates", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
    }

    [Fact]
    public void The_sides_of_a_rack_are_one_line_and_those_against_a_wall_are_left_out()
    {
        // The rack stands less than 0.1 m from the faces of the west and south walls.
        string den = string.Join('\n', SampleFile.Modest.Split('\n').Where(line => !line.Contains("desk", StringComparison.Ordinal)));
        folder.Put("corner.yaml", den + Rack.Replace("0.2, 0.2, 0.8, 0.8", "0.1, 0.1, 0.8, 0.8", StringComparison.Ordinal));
        CommandRun text = Run("improve", "corner.yaml", "--spot", "den rack");
        Assert.Contains("East side of 'rack' left open; or ", string.Join(' ', text.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        JsonElement[] open =
        [
            .. Run("improve", "corner.yaml", "--spot", "den rack", "--json").Json.GetProperty("remedies").EnumerateArray()
                .Where(r => r.GetProperty("actions")[0].GetString()!.EndsWith("of 'rack' left open", StringComparison.Ordinal)),
        ];
        JsonElement[] all = [.. Assert.Single(open).GetProperty("alternatives").EnumerateArray(), open[0]];
        Assert.True(all.Length > 1);
        Assert.All(all, r => Assert.DoesNotMatch("^(west|south) ", r.GetProperty("actions")[0].GetString()));
        Assert.Equal((2, 2), (open[0].GetProperty("seatsPassing").GetInt32(), open[0].GetProperty("seats").GetInt32())); // one side is enough
        Assert.StartsWith("east side", open[0].GetProperty("actions")[0].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_best_spot_is_improved_where_none_is_named()
    {
        string best = Run("compare", "house.yaml", "--json", "--model", "direct").Json.GetProperty("choice").GetProperty("spot").GetString()!;
        Assert.Equal(best, Run("improve", "house.yaml", "--json", "--model", "direct").Json.GetProperty("before").GetProperty("spot").GetString());
    }

    [Fact]
    public void A_seat_that_nothing_meets_ends_with_1_and_all_met_with_0()
    {
        CommandRun much = Run("improve", "much.yaml", "--spot", "loft shelf", "--model", "direct"), met = Run("improve", "house.yaml", "--spot", "loft shelf", "--model", "direct", "--confidence", "0.5");
        Assert.Equal((1, 0), (much.ExitCode, met.ExitCode));
        Assert.Contains("No remedy makes every seat pass", much.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("Every seat passes already", met.OutputUnwrapped, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrong_spot_and_a_spot_nobody_plays_are_refused()
    {
        folder.Put("own.yaml", SampleFile.Modest.Replace("hands: 0.7,", "plays: den rack, hands: 0.7,", StringComparison.Ordinal).Replace("hands: 0.75,", "plays: den rack, hands: 0.75,", StringComparison.Ordinal));
        CommandRun wrong = Run("improve", "house.yaml", "--spot", "den rak"), own = Run("improve", "own.yaml", "--spot", "loft shelf");
        Assert.Equal("linkmargin: there is no spot 'den rak'; did you mean 'den rack'?\n", wrong.Error);
        Assert.StartsWith("linkmargin: no seat plays a console at 'loft shelf'", own.Error, StringComparison.Ordinal);
        Assert.Equal((2, 2), (wrong.ExitCode, own.ExitCode));
    }

    private CommandRun Run(params string[] words) => CommandRun.In(folder.Path, words);
}
