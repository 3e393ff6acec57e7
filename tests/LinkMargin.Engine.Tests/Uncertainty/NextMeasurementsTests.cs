using CsCheck;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Engine.Tests.Uncertainty;

public sealed class NextMeasurementsTests
{
    private static readonly Spreads Some = new(4, 0.2, 3, 0.05, 20, 10, 12);

    [Fact]
    public void The_one_link_in_question_is_to_be_read_itself()
    {
        House house = OneRoom(new Material("board", 8, 3, "made up"));
        IReadOnlyList<NextMeasurement> next = Of(house, 3);
        Assert.Equal("at 'seat'", next[0].Where);
        Assert.True(next[0].UncertaintyLeft < 0.85);
    }

    [Fact, Law]
    public void Each_measurement_leaves_less_uncertainty_than_those_before_it_and_the_same_house_gives_the_same() =>
        RoomedHouse.Any.Where(house => house.Spots.Count > 0 && house.Seats.Count > 0).ForAll(
            house =>
            {
                IReadOnlyList<NextMeasurement> next = Of(house, 4);
                Assert.All(next.Zip(next.Skip(1)), pair => Assert.True(pair.Second.UncertaintyLeft <= pair.First.UncertaintyLeft + 1e-9));
                Assert.All(next, one => Assert.InRange(one.UncertaintyLeft, 0, 1 + 1e-9));
                Assert.Equal(next.Select(one => (one.Plan, one.UncertaintyLeft)), Of(house, 4).Select(one => (one.Plan, one.UncertaintyLeft)));
            },
            cases: 8);

    [Fact]
    public void Where_nothing_is_uncertain_nothing_is_to_be_read()
    {
        House house = OneRoom(new Material("board", 8, 0, "made up"));
        Assert.Empty(NextMeasurements.Of(
            new LinkModel(house, ModelDepth.Direct), Ranking.Of(new LinkModel(house, ModelDepth.Direct)), new UncertaintyBasis(Some with { ModelDb = 0 }), null, 5, 0.7));
    }

    private static IReadOnlyList<NextMeasurement> Of(House house, int most)
    {
        var model = new LinkModel(house);
        return NextMeasurements.Of(model, Ranking.Of(model), new UncertaintyBasis(Some), null, most, 0.7);
    }

    private static House OneRoom(Material wall)
    {
        RoomGrid.Side[] sides = RoomGrid.Sides([0, 4, 8], [0, 4]);
        Wall[] walls = [.. sides.Select((side, i) => new Wall($"wall {i}", side.Start, side.End, 0, 2.4, wall))];
        House house = SimpleHouse.Of(new Level("level", 0, 2.4) { Rooms = RoomGrid.Rooms([0, 4, 8], [0, 4]), Walls = walls });
        house = house with { Spots = [new Spot("spot", 0, new Point2(1, 1), 1)], Seats = [new Seat("seat", 0, new Point2(7, 3), 0.7, null, 0)] };
        double margin = LinkEvaluation.Budget(new LinkModel(house), house.Spots[0], house.Seats[0]).MarginDb;
        return house with { Seats = [house.Seats[0] with { RequiredDb = margin }] };
    }
}
