using LinkMargin.Engine.Sensitivity;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Tests.Words;

/// <summary>What a chart of assumptions calls them: for somebody who does not know the rows of the tables.</summary>
public sealed class AssumptionWordsTests
{
    private static readonly MaterialTables Tables = MaterialTablesFile.ReadBuiltIn().Tables!;

    [Theory]
    [InlineData(UnknownKind.Floor, "timber-joist-225", "timber-joist-200-boards", "floorboards, 200 mm joists")]
    [InlineData(UnknownKind.Floor, "timber-joist-225", "timber-joist-225-heated", "wood floor on heating pipes in spreader plates")]
    [InlineData(UnknownKind.Walls, "brick-102-plastered", "brick-102", "half-brick wall, 102 mm")]
    [InlineData(UnknownKind.DoorState, "open", "shut", "shut")]
    public void An_alternative_is_described_and_a_floor_by_what_differs(UnknownKind kind, string assumed, string row, string words) =>
        Assert.Equal(words, AssumptionWords.Instead(Tables, kind, assumed, row));

    [Fact]
    public void A_floor_like_the_assumed_one_is_described_whole() =>
        Assert.Equal(
            AssumptionWords.Described(Tables, UnknownKind.Floor, "timber-joist-225"),
            AssumptionWords.Instead(Tables, UnknownKind.Floor, "timber-joist-225", "timber-joist-225"));
}
