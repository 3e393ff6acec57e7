using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>Spots whose radio is on a lead.</summary>
public sealed class SpotLeadTests
{
    [Fact]
    public void The_radio_is_where_the_lead_leads_and_cables_begin_at_the_console()
    {
        House house = HouseFile.Parse(DenText.House + "spots: [{name: s, inside: rack, height: 1, lead: {length: 2 m, to: [1.2, 0.5, 1.9]}}]", "h.yaml", DenText.Tables).House!;
        Spot spot = house.Spots[0];
        Assert.Equal((new Point2(1.2, 0.5), 1.9), (spot.Plan, spot.HeightMetres));
        Assert.Equal(new SpotLead(2, new Point2(0.5, 0.5), 1), spot.Lead);
        CablePlace console = CablePlace.Of(spot, house.Fixtures);
        Assert.Equal((new Point2(0.5, 0.5), 1.0, "rack"), (console.Plan, console.HeightMetres, console.Fixture));
        Assert.Null(new MoveSpot("s", 0, new Point2(3, 4), 1).ApplyTo(house).Spots[0].Lead);
    }

    [Theory]
    [InlineData("{to: [1, 1, 1]}", "length")]
    [InlineData("{length: 2 m}", "to")]
    [InlineData("{length: 0.5 m, to: [3.5, 0.5, 1]}", "is 0.5 m long, but its ends are 3 m apart in a straight line; fix 'length' or 'to'")]
    [InlineData("{length: 5 m, to: [3, 1.5, 1]}", "the receiver of the spot 's' is inside the fixture 'block', which is solid; move it")]
    [InlineData("{length: 5 m, to: [1, 1, 3]}", "to (height)")]
    [InlineData("{length: 5 m, to: [1, 1, 1], kind: usb-2}", "'kind' is not a key of a lead; write one of: length, to")]
    [InlineData("{length: 500 m, to: [1, 1, 1]}", "is outside the allowed")]
    public void Each_fault_has_a_remedy(string lead, string part)
    {
        HouseParseResult read = HouseFile.Parse($"{DenText.House}spots: [{{name: s, inside: rack, height: 1, lead: {lead}}}]", "h.yaml", DenText.Tables);
        Problem problem = Assert.Single(read.Problems);
        Assert.Contains(part, problem.Message, StringComparison.Ordinal);
        Assert.Equal(DenText.House.Split('\n').Length, problem.Mark.Line);
        Assert.Null(read.House);
    }
}
