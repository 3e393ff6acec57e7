using CsCheck;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Tests.Links;

namespace LinkMargin.Engine.Tests.Fields;

/// <summary>A field is the point answer, cell by cell, however many threads work on it.</summary>
public sealed class FieldLawTests
{
    private const int Houses = 40;

    private static readonly Gen<(House House, FieldRequest Request)> HouseAndRequest =
        from house in RandomHouse.Any
        from cell in Gen.Double[0.5, 1.5]
        from hands in RandomPlace.Height
        from level in Gen.Int[0, house.Levels.Count - 1]
        from room in RandomPlace.Triangle.Select(outline => new Room("room", outline))
        from roomed in Gen.Bool
        let levels = house.Levels.Select(l => roomed ? l with { Rooms = [room] } : l).ToArray()
        select (
            house with { Levels = levels },
            new FieldRequest(house.Spots[0], level) { CellMetres = cell, HandsMetres = hands });

    [Theory, Law]
    [InlineData(ModelDepth.Direct)]
    [InlineData(ModelDepth.Full)]
    public void Any_number_of_threads_gives_the_same_bits(ModelDepth depth) =>
        HouseAndRequest.ForAll(
            (house, request) =>
            {
                var model = new LinkModel(house, depth);
                long[] alone = Bits(FieldComputation.Compute(model, request with { Threads = 1 }));
                Assert.All([2, 3, 4], threads =>
                    Assert.Equal(alone, Bits(FieldComputation.Compute(model, request with { Threads = threads }))));
                Assert.Equal(alone, Bits(FieldComputation.Compute(model, request)));
                Assert.Equal(alone, Bits(FieldComputation.Compute(new LinkModel(house, depth), request)));
            },
            cases: depth == ModelDepth.Direct ? Houses : Houses / 4);

    [Theory, Law]
    [InlineData(ModelDepth.Direct)]
    [InlineData(ModelDepth.Full)]
    public void A_cell_is_the_margin_of_a_seat_at_its_centre(ModelDepth depth) =>
        HouseAndRequest.ForAll(
            (house, request) =>
            {
                var model = new LinkModel(house, depth);
                Field field = FieldComputation.Compute(model, request);
                Level level = house.Levels[request.LevelIndex];
                Assert.Equal(field.Grid.Count, field.MarginDb.Count);
                for (int cell = 0; cell < field.Grid.Count; cell++)
                {
                    Point2 centre = field.Grid.CentreOf(cell % field.Grid.Columns, cell / field.Grid.Columns);
                    if (level.Rooms.Count > 0 && !level.Rooms[0].Outline.Contains(centre))
                    {
                        Assert.True(double.IsNaN(field.MarginDb[cell]));
                        continue;
                    }

                    Seat seat = new("seat", request.LevelIndex, centre, request.HandsMetres, null, 15);
                    Assert.Equal(LinkEvaluation.Budget(model, request.Spot, seat).MarginDb, field.MarginDb[cell], LineLoss.SameDb);
                }
            },
            cases: depth == ModelDepth.Direct ? Houses : Houses / 4);

    [Fact]
    public void Each_row_is_reported_of_once()
    {
        House house = SimpleHouse.OfWalls(SimpleHouse.FullWall("w", default, new Point2(4, 3), 5)) with
        {
            Spots = [new Spot("spot", 0, default, 1)],
        };
        int reported = 0;
        Field field = FieldComputation.Compute(
            new LinkModel(house, ModelDepth.Direct), new FieldRequest(house.Spots[0], 0), () => Interlocked.Increment(ref reported));
        Assert.Equal((40, 30), (field.Grid.Columns, field.Grid.Rows));
        Assert.Equal(30, reported);
    }

    [Fact]
    public void May_be_stopped()
    {
        House house = SimpleHouse.OfWalls(SimpleHouse.FullWall("w", default, new Point2(4, 3), 5)) with
        {
            Spots = [new Spot("spot", 0, default, 1)],
        };
        using var stop = new CancellationTokenSource();
        FieldRequest request = new(house.Spots[0], 0) { Threads = 1 };
        Assert.Throws<OperationCanceledException>(() =>
            FieldComputation.Compute(new LinkModel(house, ModelDepth.Direct), request, stop.Cancel, stop.Token));
    }

    private static long[] Bits(Field field) => [.. field.MarginDb.Select(BitConverter.DoubleToInt64Bits)];
}
