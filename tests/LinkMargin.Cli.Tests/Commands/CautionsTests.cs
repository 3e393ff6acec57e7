using System.Text.Json;

namespace LinkMargin.Cli.Tests.Commands;

/// <summary>A formula used outside its range shows in text and JSON wherever its figure decides.</summary>
public sealed class CautionsTests : IDisposable
{
    private const string Caution = "'gallery | outside' is hit at more than 85 deg from head-on";

    // The wall beside the line reflects at 87°; a third of the way in it would be at 81°.
    private const string Row = """
        house: Long Row
        units: m
        levels:
          - name: ground
            height: 2.4
            outer: brick-215
            rooms:
              - {name: gallery, corner: [0, 0], size: [12, 4]}
        spots:
          - {name: shelf, level: ground, at: [0.5, 0.3, 1.0]}
        seats:
          - {name: bench, level: ground, at: [11.5, 0.3], facing: west, required: 60 dB}
        zones:
          - {name: ledge, level: ground, corner: [0.2, 0.2], size: [0.4, 0.2], heights: [1.0]}

        """;

    private readonly ScratchFolder folder = new();

    public CautionsTests()
    {
        folder.Put("row.yaml", Row);
        folder.Put("plain.yaml", Row.Replace("11.5, 0.3", "4, 2", StringComparison.Ordinal));
    }

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("explain", "path ")]
    [InlineData("compare", "'shelf' to 'bench'")]
    [InlineData("place", "place 1 to 'bench'")]
    [InlineData("improve", "'bench' as things are")]
    public void Text_says_what_the_caution_is_about(string command, string about)
    {
        CommandRun run = CommandRun.In(folder.Path, command, "row.yaml");
        Assert.Contains($"Caution about {about}", run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains(Caution, run.OutputUnwrapped, StringComparison.Ordinal);
        Assert.DoesNotContain("Caution about", CommandRun.In(folder.Path, command, "plain.yaml").OutputUnwrapped, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_has_them_at_the_path_the_link_the_spot_the_place_and_the_remedy()
    {
        JsonElement link = Json("explain");
        AssertSaid(link);
        AssertSaid(Assert.Single(link.GetProperty("paths").EnumerateArray(), path => path.GetProperty("cautions").GetArrayLength() > 0));
        JsonElement comparison = Json("compare");
        AssertSaid(comparison.GetProperty("ranking")[0]);
        AssertSaid(comparison.GetProperty("links")[0]);
        AssertSaid(Json("place").GetProperty("places")[0]);
        JsonElement improve = Json("improve");
        AssertSaid(improve.GetProperty("before"));
        AssertSaid(improve.GetProperty("remedies").EnumerateArray().First(r => r.GetProperty("actions")[0].GetString()!.StartsWith("other controllers", StringComparison.Ordinal)));
        Assert.Equal(0, CommandRun.In(folder.Path, "explain", "plain.yaml", "--json").Json.GetProperty("cautions").GetArrayLength());
    }

    private static void AssertSaid(JsonElement element) =>
        Assert.StartsWith(Caution, Assert.Single(element.GetProperty("cautions").EnumerateArray()).GetString(), StringComparison.Ordinal);

    private JsonElement Json(string command) => CommandRun.In(folder.Path, command, "row.yaml", "--json").Json;
}
