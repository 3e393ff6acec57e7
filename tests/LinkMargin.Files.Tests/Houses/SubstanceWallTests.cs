using LinkMargin.Files.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>A substance is no wall: its loss belongs to a length, and a wall has none.</summary>
public sealed class SubstanceWallTests
{
    [Theory]
    [InlineData("brick", "outer: 'brick' is a substance: its 3.2 dB are stated for 100 mm and count here whatever the wall's thickness; choose a row for walls, such as 'brick-102' or 'brick-102-plastered' or 'brick-215'")]
    [InlineData("brick-102", null)]
    public void A_wall_of_a_substance_is_odd(string outer, string? said)
    {
        string text = $$"""
            house: One room
            levels:
              - name: only
                height: 2.4
                outer: {{outer}}
                rooms: [{name: room, corner: [0, 0], size: [4, 3]}]
            spots: [{name: shelf, at: [1, 1, 1]}]
            seats: [{name: sofa, at: [3, 2]}]
            """;
        HouseParseResult parsed = HouseFile.Parse(text, "house.yaml", MaterialTablesFile.ReadBuiltIn().Tables!);
        Assert.NotNull(parsed.House);
        Assert.Equal(
            said is null ? [] : [(Severity.Warning, said)], parsed.Problems.Select(p => (p.Severity, p.Message)));
    }
}
