using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Engine.Tests.Uncertainty;

/// <summary>The map of the choice against spots put in its cells.</summary>
public sealed class ChoiceAtConfidenceTests
{
    private const double HeightMetres = 1.2;

    private static readonly UncertaintyBasis Basis = new(new Spreads(4, 0.2, 3, 0.05, 20, 10, 12)) { Draws = 200 };

    [Theory]
    [InlineData(0.9)]
    [InlineData(0.5)]
    public void In_an_open_hall_every_cell_has_the_margin_to_count_on_of_a_spot_put_there(double confidence)
    {
        // Without walls all cells are as uncertain, so nothing is lost in carrying over, and the straight line is exact.
        House house = Hall([Room("hall", 0, 0, 12, 12)], new Seat("near", 0, new Point2(2, 2), 0.7, null, 15), new Seat("far", 0, new Point2(9, 8), 0.7, null, 20));
        var model = new LinkModel(house, ModelDepth.Direct);
        Field map = MapOf(model, 1, confidence);
        Assert.All(Computed(map), cell => Assert.Equal(ExactDb(model, map, cell, confidence), map.MarginDb[cell], 1e-4));
    }

    [Fact]
    public void Behind_an_uncertain_wall_the_map_follows_room_by_room()
    {
        // Two rooms, one wall of wide spread: a map that took the same from both would be wrong by decibels.
        House house = Hall([Room("west", 0, 0, 6, 12), Room("east", 6, 0, 12, 12)], new Seat("seat", 0, new Point2(2, 2), 0.7, null, 15));
        var wall = new Wall("between", new Point2(6, 0), new Point2(6, 12), 0, 2.5, SimpleHouse.Material("foil", 20) with { SpreadDb = 6 });
        var model = new LinkModel(house with { Levels = [house.Levels[0] with { Walls = [wall] }] }, ModelDepth.Direct);
        Field map = MapOf(model, 0.5, 0.9), median = MapOf(model, 0.5, 0.5);
        double[] errorsDb = [.. Computed(map).Select(cell => Math.Abs(ExactDb(model, map, cell, 0.9) - map.MarginDb[cell]))];
        Assert.InRange(errorsDb.Max(), 0, 0.3);
        double[] allowancesDb = [.. Computed(map).Select(cell => median.MarginDb[cell] - map.MarginDb[cell])];
        Assert.True(allowancesDb.Max() > allowancesDb.Min() + 2);
    }

    [Fact]
    public void Outside_every_room_there_is_nothing()
    {
        House house = Hall([Room("corner", 0, 0, 4, 4), Room("far", 8, 8, 12, 12)], new Seat("seat", 0, new Point2(2, 2), 0.7, null, 15));
        Field map = MapOf(new LinkModel(house, ModelDepth.Direct), 1, 0.9);
        Assert.Equal(32, Computed(map).Count());
        Assert.Equal(144, map.Grid.Count);
    }

    private static Field MapOf(LinkModel model, double cellMetres, double confidence) => new ChoiceAtConfidence(
        model, new PlaceSearch(model, new PlaceRequest()), Basis, confidence).MapOf(0, HeightMetres, cellMetres, model.House.Spots[0]);

    private static IEnumerable<int> Computed(Field map) => Enumerable.Range(0, map.Grid.Count).Where(cell => !double.IsNaN(map.MarginDb[cell]));

    private static double ExactDb(LinkModel model, Field map, int cell, double confidence) => new JudgeAtConfidence(Basis, confidence).Score(
        model,
        new Spot("there", 0, map.Grid.CentreOf(cell % map.Grid.Columns, cell / map.Grid.Columns), HeightMetres),
        model.House.Seats).WeakestHeadroomDb;

    private static Room Room(string name, double left, double bottom, double right, double top) =>
        new(name, new Polygon([new(left, bottom), new(right, bottom), new(right, top), new(left, top)]));

    private static House Hall(IReadOnlyList<Room> rooms, params Seat[] seats) => SimpleHouse.OfWalls() with
    {
        Levels = [new Level("hall", 0, 2.5) { Rooms = rooms }],
        Spots = [new Spot("rack", 0, new Point2(6, 1), 1)],
        Seats = seats,
    };
}
