using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Contours;

namespace LinkMargin.Plots.Tests.Contours;

public class ContourIslandsTests
{
    private const double Line = 15;
    private const double CellMetres = 0.05;

    // Both sides of the limit: a square of 0.3 square metres has a side of 0.548 m, here in cells of 0.05 m.
    [Theory]
    [InlineData(10, true)]
    [InlineData(10, false)]
    [InlineData(11, true)]
    [InlineData(11, false)]
    public void A_patch_is_smoothed_away_exactly_when_it_is_smaller_than_the_limit(int side, bool isAbove)
    {
        bool isSmall = side * side * CellMetres * CellMetres < ContourIslands.LeastSquareMetres;
        Assert.Equal(side == 10, isSmall);
        FieldSurface surface = Smoothed(Hall, p => In(p, 1, 1, side) == isAbove ? 18 : 12);
        Assert.Equal(isSmall, ContourTracer.Trace(surface, Line).Count == 0);
        Assert.Equal(isSmall != isAbove, surface.At(1.2, 1.2) >= Line);
    }

    [Fact]
    public void A_small_patch_under_a_seat_stays()
    {
        double Margin(Point2 p) => In(p, 1, 1, 6) ? 18 : 12;
        Assert.Empty(ContourTracer.Trace(Smoothed(Hall, Margin), Line));
        Assert.Single(ContourTracer.Trace(Smoothed(Hall, Margin, new Point2(1.15, 1.15)), Line));
        Assert.Empty(ContourTracer.Trace(Smoothed(Hall, Margin, new Point2(2.5, 2.5)), Line));
    }

    [Fact]
    public void A_peak_goes_with_all_its_lines_and_a_wide_one_loses_only_its_top()
    {
        double Margin(Point2 p) => In(p, 1, 1, 5) ? 30 : In(p, 0.8, 0.8, 16) ? 22 : 12;
        FieldSurface surface = Smoothed(Hall, Margin);
        Assert.Empty(ContourTracer.Trace(surface, 25));
        Assert.Single(ContourTracer.Trace(surface, 20));
        Assert.InRange(surface.At(1.1, 1.1), 22, 25);
    }

    // A cupboard of 0.16 square metres as a whole is no island: no line ends in it.
    [Fact]
    public void A_small_room_behind_a_wall_keeps_its_margin_and_one_behind_an_open_door_is_a_patch_like_others()
    {
        double Margin(Point2 p) => p.X < 0.4 && p.Y < 0.4 ? 18 : 12;
        Assert.Equal(18, Smoothed(Cupboard(isOpen: false), Margin).At(0.2, 0.2), 9);
        Assert.InRange(Smoothed(Cupboard(isOpen: true), Margin).At(0.2, 0.2), 12, Line);
    }

    [Fact]
    public void What_is_left_is_the_surface_as_it_was()
    {
        Func<Point2, double> slope = p => 8 + (4 * p.X);
        FieldSurface plain = SurfaceOf(Hall, slope), smoothed = Smoothed(Hall, slope);
        for (double x = 0.1; x < 2.9; x += 0.17)
        {
            Assert.Equal(plain.At(x, 1.3), smoothed.At(x, 1.3), 12);
        }
    }

    private static Level Hall { get; } = new("hall", 0, 2.4) { Rooms = [Rectangle("hall", 0, 0, 3, 3)] };

    private static Level Cupboard(bool isOpen)
    {
        var board = new Material("board", 2, 1, "invented for drawing") { ThicknessMetres = 0.02 };
        var door = new Opening("door", OpeningKind.Door, 0.05, 0.3, 0, 2, board, isOpen);
        return new("hall", 0, 2.4)
        {
            Rooms = [Rectangle("cupboard", 0, 0, 0.4, 0.4), new Room("hall", new Polygon([new(0.4, 0), new(3, 0), new(3, 3), new(0, 3), new(0, 0.4), new(0.4, 0.4)]))],
            Walls =
            [
                new Wall("side", new(0.4, 0), new(0.4, 0.4), 0, 2.4, board) { Openings = [door] },
                new Wall("front", new(0.4, 0.4), new(0, 0.4), 0, 2.4, board),
            ],
        };
    }

    private static bool In(Point2 p, double left, double bottom, int cells) =>
        p.X > left && p.X < left + (cells * CellMetres) && p.Y > bottom && p.Y < bottom + (cells * CellMetres);

    private static FieldSurface Smoothed(Level level, Func<Point2, double> margin, params Point2[] seats) =>
        ContourIslands.Smoothed(SurfaceOf(level, margin), level, [10, Line, 20, 25], seats);

    private static FieldSurface SurfaceOf(Level level, Func<Point2, double> margin) =>
        new(Cones.FieldOf(new Grid(new(0, 0), CellMetres, 60, 60), margin), level.Rooms, evenings: 0);

    private static Room Rectangle(string name, double left, double bottom, double right, double top) =>
        new(name, new Polygon([new(left, bottom), new(right, bottom), new(right, top), new(left, top)]));
}
