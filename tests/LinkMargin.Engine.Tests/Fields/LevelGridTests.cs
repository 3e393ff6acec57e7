using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Fields;

public sealed class LevelGridTests
{
    [Theory]
    [InlineData(6.4, 5.2, 0.1, 64, 52)]
    [InlineData(6.41, 5.2, 0.1, 65, 52)]
    [InlineData(0.05, 0.3, 0.1, 1, 3)]
    [InlineData(3, 3, 10, 1, 1)]
    public void Covers_the_rooms_with_whole_cells(double width, double depth, double cell, int columns, int rows)
    {
        Grid grid = LevelGrid.Over(Roomed(width, depth), cell);
        Assert.Equal((columns, rows), (grid.Columns, grid.Rows));
        Assert.Equal(columns * rows, grid.Count);
        Assert.Equal(new Point2(1, 2), grid.Origin);
        Assert.Equal(1 + (cell / 2), grid.CentreOf(0, 0).X, 1e-12);
        Assert.Equal(2 + (cell * (rows - 0.5)), grid.CentreOf(0, rows - 1).Y, 1e-12);
    }

    [Fact]
    public void Goes_by_the_walls_where_there_is_no_room_and_is_empty_where_there_is_nothing()
    {
        Level walled = SimpleHouse.OfWalls(SimpleHouse.FullWall("w", new Point2(5, -1), new Point2(2, 3), 3)).Levels[0];
        Grid grid = LevelGrid.Over(walled, 0.5);
        Assert.Equal((new Point2(2, -1), 6, 8), (grid.Origin, grid.Columns, grid.Rows));
        Assert.Equal(0, LevelGrid.Over(new Level("bare", 0, 2.4), 0.5).Count);
    }

    [Fact]
    public void A_place_is_indoors_in_any_room_and_everywhere_where_none_is_known()
    {
        Level level = Roomed(2, 2);
        Assert.True(LevelGrid.IsIndoors(level, new Point2(1.5, 2.5)));
        Assert.False(LevelGrid.IsIndoors(level, new Point2(0.5, 2.5)));
        Assert.True(LevelGrid.IsIndoors(new Level("bare", 0, 2.4), new Point2(100, 100)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Refuses_what_is_no_cell(double cell) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LevelGrid.Over(Roomed(2, 2), cell));

    [Fact]
    public void Refuses_more_cells_than_it_says_and_no_fewer()
    {
        Assert.Equal(LevelGrid.MostCells, LevelGrid.Over(Roomed(4000, 5000), 1).Count);
        Assert.Throws<ArgumentOutOfRangeException>(() => LevelGrid.Over(Roomed(4000.5, 5000), 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => LevelGrid.Over(Roomed(4, 5), 1e-300));
    }

    private static Level Roomed(double width, double depth) => new("level", 0, 2.4)
    {
        Rooms = [new Room("room", new Polygon([new(1, 2), new(1 + width, 2), new(1 + width, 2 + depth), new(1, 2 + depth)]))],
    };
}
