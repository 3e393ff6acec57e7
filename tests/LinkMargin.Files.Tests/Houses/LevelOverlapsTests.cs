using LinkMargin.Files.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>A level drawn beside the others instead of over them.</summary>
public sealed class LevelOverlapsTests
{
    private const double Depth = 5;

    // How far the loft reaches over the den for the ground they share to be at the limit.
    private const double Limit = HouseLimits.LeastLevelOverlap / Depth;

    [Theory]
    [InlineData(4 - Limit - 1e-4, false)]
    [InlineData(4 - Limit + 1e-4, true)]
    [InlineData(4, true)]
    [InlineData(40, true)]
    public void A_level_over_no_other_is_reported(double west, bool isTold)
    {
        Problem[] problems = OfLevels(Read(west));
        Assert.Equal(isTold, problems.Length == 1);
        Assert.All(problems, p => Assert.StartsWith("house.yaml:12:5: level 'high' is not above any room of a lower level: it covers ", p.ToString(), StringComparison.Ordinal));
        Assert.All(problems, p => Assert.EndsWith("and 'low' covers (0, 0) to (4, 5); measure every level from the same corner of the house", p.Message, StringComparison.Ordinal));
        Assert.NotNull(Read(west).House); // a warning
    }

    [Fact]
    public void A_level_over_any_lower_one_will_do()
    {
        // The middle one is half a storey beside the lowest; the highest lies over the lowest alone.
        string third = Text(4).Replace("    rooms:\n      - {name: loft", "    above: {build-up: joisted, joists: {run: x}}\n    rooms:\n      - {name: loft", StringComparison.Ordinal)
            + "  - name: top\n    height: 2.3\n    outer: brick\n    rooms:\n      - {name: attic, corner: [0, 0], size: [4, 5]}\n";
        Problem only = Assert.Single(OfLevels(Of(third)));
        Assert.Contains("'high'", only.Message, StringComparison.Ordinal);
    }

    // A house without spots and seats is told too.
    private static Problem[] OfLevels(HouseParseResult parsed) => [.. parsed.Problems.Where(p => !p.Message.StartsWith("the house has no", StringComparison.Ordinal))];

    private static HouseParseResult Read(double west) => Of(Text(west));

    private static HouseParseResult Of(string text) => HouseFile.Parse(text, "house.yaml", SmallTables.Tables);

    private static string Text(double west) => FormattableString.Invariant($$$"""
        house: Two
        units: m
        radios: {console: console-typical, controller: {name: mine, transmit: 4 dBm, gain: -2 dBi, sensitivity: -88 dBm, hand: 6 dB}}
        levels:
          - name: low
            height: 2.4
            outer: brick
            inner: board
            rooms:
              - {name: den, corner: [0, 0], size: [4, 5]}
            above: {build-up: joisted, joists: {run: x}}
          - name: high
            height: 2.3
            outer: brick
            rooms:
              - {name: loft, corner: [{{{west}}}, 0], size: [6, 5]}

        """);
}
