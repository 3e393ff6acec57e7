using System.Text.Json;

namespace LinkMargin.Cli.Tests.Commands;

/// <summary>The assumptions a margin hangs on, through the real program.</summary>
public sealed class AssumptionsTests
{
    private const string House = """
        house: Curlew Row
        levels:
          - name: ground
            height: 2.4
            outer: brick-cavity
            inner: drywall-stud
            rooms:
              - {name: lounge, corner: [0, 0], size: [4.2, 5.0]}
              - {name: kitchen, corner: [4.2, 0], size: [3.0, 5.0]}
            walls:
              - {name: spine, along: [[4.2, 0], [4.2, 5.0]], material: brick-102-plastered}
            above:
              build-up: timber-joist-200
              joists: {run: x, spacing: 0.4}
          - name: upstairs
            height: 2.3
            outer: brick-cavity
            rooms:
              - {name: bedroom, corner: [0, 0], size: [7.2, 5.0]}
        spots:
          - {name: kitchen shelf, level: ground, at: [6.5, 0.6, 1.8]}
          - {name: bedroom shelf, level: upstairs, at: [0.6, 4.4, 1.8]}
        seats:
          - {name: sofa, level: ground, at: [1.9, 3.4], facing: east}
          - {name: beanbag, level: upstairs, at: [5.2, 2.2], hands: 0.45, facing: north, plays: bedroom shelf}
        """;

    /// <summary>Every change that is one word of the file, made there by hand, gives exactly the margins and the best spot that were reported.</summary>
    [Fact]
    public void Each_alternative_gives_what_the_file_edited_by_hand_gives()
    {
        using var folder = new ScratchFolder();
        folder.Put("house.yaml", House);
        JsonElement explained = Explain(folder, "--json").Json;
        int compared = 0;
        foreach (JsonElement assumption in explained.GetProperty("assumptions").EnumerateArray())
        {
            string assumed = assumption.GetProperty("assumed").GetString()!;
            foreach (JsonElement one in assumption.GetProperty("alternatives").EnumerateArray())
            {
                folder.Put("edited.yaml", House.Replace($": {assumed}", $": {one.GetProperty("instead").GetString()}", StringComparison.Ordinal));
                JsonElement edited = CommandRun.In(folder.Path, "compare", "edited.yaml", "--json").Json;
                JsonElement link = edited.GetProperty("links").EnumerateArray()
                    .Single(l => l.GetProperty("spot").GetString() == "kitchen shelf" && l.GetProperty("seat").GetString() == "sofa");
                Assert.Equal(link.GetProperty("marginAtConfidenceDb").GetDouble(), one.GetProperty("marginAtConfidenceDb").GetDouble());
                Assert.Equal(edited.GetProperty("ranking")[0].GetProperty("spot").GetString(), one.GetProperty("bestSpot").GetString());
                Assert.Equal(
                    one.GetProperty("marginAtConfidenceDb").GetDouble() - explained.GetProperty("marginAtConfidenceDb").GetDouble(),
                    one.GetProperty("changeDb").GetDouble(),
                    9);
                compared++;
            }
        }

        Assert.True(compared >= 4, $"only {compared} alternatives were compared");
    }

    [Fact]
    public void The_wall_on_the_direct_path_is_among_them_and_what_moves_the_margin_most_comes_first()
    {
        using var folder = new ScratchFolder();
        folder.Put("house.yaml", House);
        JsonElement[] assumptions = [.. Explain(folder, "--json").Json.GetProperty("assumptions").EnumerateArray()];
        Assert.Contains(assumptions, one => one.TryGetProperty("name", out JsonElement name) && name.GetString() == "spine");
        double[] greatest = [.. assumptions.Select(one => one.GetProperty("alternatives").EnumerateArray().Max(a => Math.Abs(a.GetProperty("changeDb").GetDouble())))];
        Assert.Equal("spine", assumptions[Array.IndexOf(greatest, greatest.Max())].GetProperty("name").GetString());
        Assert.All(assumptions, one => Assert.True(one.GetProperty("spreadDb").GetDouble() >= 0));
    }

    [Fact]
    public void The_text_shows_the_figures_of_the_json_and_the_picture_is_written()
    {
        using var folder = new ScratchFolder();
        folder.Put("house.yaml", House);
        CommandRun run = Explain(folder, "--plot", "assumptions.png");
        Assert.Contains("'spine'", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("brick-102-plastered", run.Output, StringComparison.Ordinal);
        Assert.Contains("assumptions.png: these assumptions.", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.True(new FileInfo(folder.PathOf("assumptions.png")).Length > 10_000);
    }

    [Fact]
    public void A_picture_without_assumptions_and_a_seat_that_plays_elsewhere_are_refused()
    {
        using var folder = new ScratchFolder();
        folder.Put("house.yaml", House);
        CommandRun bare = CommandRun.In(folder.Path, "explain", "house.yaml", "--spot", "kitchen shelf", "--seat", "sofa", "--plot", "a.png");
        Assert.Equal((2, "linkmargin: --plot draws what --assumptions finds; add --assumptions\n"), (bare.ExitCode, bare.Error));
        CommandRun elsewhere = CommandRun.In(folder.Path, "explain", "house.yaml", "--spot", "kitchen shelf", "--seat", "beanbag", "--assumptions");
        Assert.Equal(2, elsewhere.ExitCode);
        Assert.Contains("'beanbag' plays another console", elsewhere.Error, StringComparison.Ordinal);
    }

    private static CommandRun Explain(ScratchFolder folder, params string[] more) =>
        CommandRun.In(folder.Path, ["explain", "house.yaml", "--spot", "kitchen shelf", "--seat", "sofa", "--assumptions", .. more]);
}
