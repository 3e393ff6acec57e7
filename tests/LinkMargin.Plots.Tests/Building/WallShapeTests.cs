using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Building;

namespace LinkMargin.Plots.Tests.Building;

public class WallShapeTests
{
    private static readonly Material Thick = new("thick", 8, 1, "invented for drawing") { ThicknessMetres = 0.4 };
    private static readonly Material Thin = new("thin", 3, 1, "invented for drawing") { ThicknessMetres = 0.1 };

    [Fact]
    public void A_lone_wall_is_a_rectangle_as_thick_as_its_material()
    {
        WallShape shape = Assert.Single(WallShape.Of(Level(Wall(0, 0, 3, 0, Thick)), 0));
        Assert.Equal(3 * 0.4, new Polygon(shape.Corners).AreaSquareMetres, 9);
    }

    [Fact]
    public void A_wall_thinner_than_can_be_seen_is_drawn_as_thick_as_can()
    {
        WallShape shape = Assert.Single(WallShape.Of(Level(Wall(0, 0, 3, 0, Thin)), 0.25));
        Assert.Equal(3 * 0.25, new Polygon(shape.Corners).AreaSquareMetres, 9);
    }

    [Fact]
    public void Openings_leave_gaps_as_wide_as_they_are()
    {
        Wall wall = Wall(0, 0, 5, 0, Thin) with
        {
            Openings = [Opening(3, 1), Opening(0.5, 0.8)],
        };
        IReadOnlyList<WallShape> shapes = WallShape.Of(Level(wall), 0);
        Assert.Equal(3, shapes.Count);
        Assert.Equal((5 - 1.8) * 0.1, shapes.Sum(s => new Polygon(s.Corners).AreaSquareMetres), 9);
    }

    [Fact]
    public void An_opening_from_end_to_end_leaves_nothing() =>
        Assert.Empty(WallShape.Of(Level(Wall(0, 0, 2, 0, Thin) with { Openings = [Opening(0, 2)] }), 0));

    // A closed ring of walls about 4 × 3, drawn mitred, is the outer rectangle less the inner one: no gap, no overlap.
    [Theory]
    [InlineData(0)]
    [InlineData(0.7)]
    public void Mitred_corners_neither_leave_a_notch_nor_overlap(double turn)
    {
        Point2[] corners = [.. new Point2[] { new(0, 0), new(4, 0), new(4, 3), new(0, 3) }.Select(p => Turned(p, turn))];
        Wall[] ring = [.. Enumerable.Range(0, 4).Select(i => Wall(corners[i], corners[(i + 1) % 4], i % 2 == 0 ? Thick : Thin))];

        // Two walls are written from their other end: it must not matter.
        ring[1] = Wall(ring[1].End, ring[1].Start, ring[1].Material);
        double area = WallShape.Of(Level(ring), 0).Sum(s => new Polygon(s.Corners).AreaSquareMetres);
        Assert.Equal((4.1 * 3.4) - (3.9 * 2.6), area, 9);
    }

    [Fact]
    public void A_corner_at_a_slant_is_closed_too()
    {
        Level level = Level(Wall(0, 0, 4, 0, Thick), Wall(4, 0, 6, 2, Thick));
        WallShape[] shapes = [.. WallShape.Of(level, 0)];
        Assert.Equal(2, shapes[0].Corners.Count(c => shapes[1].Corners.Any(o => o.DistanceTo(c) < 1e-9)));
    }

    // Against one wall, or two in one line: of another material a wall ends at the face, of the same in the middle.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_wall_that_ends_against_another_ends_at_its_face_or_in_its_middle(bool isSplit)
    {
        Wall[] through = isSplit ? [Wall(-2, 0, 0, 0, Thick), Wall(0, 0, 2, 0, Thick)] : [Wall(-2, 0, 2, 0, Thick)];
        Wall thin = Wall(0, 3, 0, 0, Thin), same = Wall(0, 3, 0, 0, Thick);
        Assert.Equal(0.2, WallShape.Of(Level([.. through, thin]), 0)[^1].Corners.Min(c => c.Y), 9);
        Assert.Equal(0, WallShape.Of(Level([.. through, same]), 0)[^1].Corners.Min(c => c.Y), 9);
    }

    // Two lines of walls that cross, each written as two: the thicker goes through, the other stops at its faces.
    [Fact]
    public void Where_walls_cross_no_hole_is_left()
    {
        Level level = Level(
            Wall(-2, 0, 0, 0, Thin), Wall(0, 0, 2, 0, Thin), Wall(0, -2, 0, 0, Thick), Wall(0, 0, 0, 2, Thick));
        double area = WallShape.Of(level, 0).Sum(s => new Polygon(s.Corners).AreaSquareMetres);
        Assert.Equal((4 * 0.4) + ((4 - 0.4) * 0.1), area, 9);
    }

    [Fact]
    public void A_wall_that_leaves_much_of_the_storey_open_is_not_full()
    {
        Assert.False(Assert.Single(WallShape.Of(Level(Wall(0, 0, 2, 0, Thin) with { TopMetres = 1.1 }), 0)).IsFull);
        Assert.True(Assert.Single(WallShape.Of(Level(Wall(0, 0, 2, 0, Thin)), 0)).IsFull);
    }

    [Fact]
    public void A_composite_is_as_thick_as_its_layers_and_an_unknown_as_is_assumed()
    {
        Material composite = new("composite", 3, 1, "invented for drawing")
        {
            Layers = [new(null, "air", 0.05, 0), new(null, "air", 0.02, 0)],
        };
        Assert.Equal(0.07, WallShape.ThicknessOf(composite), 12);
        Assert.Equal(WallShape.AssumedThicknessMetres, WallShape.ThicknessOf(new("unknown", 3, 1, "invented for drawing")));
    }

    [Fact]
    public void A_door_swings_into_the_room_where_only_one_side_has_one()
    {
        var room = new Room("room", new Polygon([new(0, -3), new(4, -3), new(4, 0), new(0, 0)]));
        Wall wall = Wall(0, 0, 4, 0, Thin);
        DoorSwing swing = DoorSwing.Of(Level(wall) with { Rooms = [room] }, wall, Opening(1, 0.8));
        Assert.Equal(new Point2(1, 0), swing.Hinge);
        Assert.Equal(new Point2(1, -0.8), swing.Tip);
    }

    [Fact]
    public void A_turned_shell_has_its_open_side_turned_with_it()
    {
        var rack = new Fixture("rack", 0, new(0, 0), 2, 1, 90, 0, 1, Thin) { IsShell = true, OpenSides = BoxSides.East };
        (Point2 from, Point2 to, _) = Assert.Single(FixtureLayer.SidesOf(rack), s => !s.IsThere);
        Assert.Equal(1, (0.5 * (from + to)).Y, 9);
        Assert.Equal(0, (0.5 * (from + to)).X, 9);
    }

    private static Point2 Turned(Point2 p, double turn) =>
        new((p.X * Math.Cos(turn)) - (p.Y * Math.Sin(turn)), (p.X * Math.Sin(turn)) + (p.Y * Math.Cos(turn)));

    private static Level Level(params Wall[] walls) => new("level", 0, 2.5) { Walls = walls };

    private static Wall Wall(double x0, double y0, double x1, double y1, Material material) =>
        Wall(new(x0, y0), new(x1, y1), material);

    private static Wall Wall(Point2 start, Point2 end, Material material) => new("wall", start, end, 0, 2.5, material);

    private static Opening Opening(double offset, double width) =>
        new("opening", OpeningKind.Door, offset, width, 0, 2, null, IsOpen: true);
}
