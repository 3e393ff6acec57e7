using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Scenes;

/// <summary>For fronts, walls that continue each other are one wall with the openings of all, whichever way each is drawn.</summary>
public sealed class JoinedWallTests
{
    private static readonly VerticalExtent Full = new(0, 2.4, true, true);

    [Fact]
    public void A_wall_in_three_parts_is_one()
    {
        JoinedWall wall = Assert.Single(Joined(
            Wall(4, 7, Full, 1),
            Wall(4, 0, Full, 1, new OpeningPanel(1, 1.8, 0, 2, 3, 0)),
            Wall(7, 9, Full, 1, new OpeningPanel(0.5, 1, 0, 2, 4, 0))));
        Assert.Equal((0, 9, 1), (wall.Start.X, wall.End.X, wall.Material));
        Assert.Equal([(2.2, 3.0, 3), (7.5, 8.0, 4)], wall.Openings.Select(o => (Math.Round(o.From, 9), Math.Round(o.To, 9), o.Filling)));
        Assert.Equal([(2.2 / 9, 3.0 / 9), (7.5 / 9, 8.0 / 9)], wall.OpeningsWithin(double.NegativeInfinity, double.PositiveInfinity).ToArray().Select(o => (o.From, o.To)), (one, other) =>
            Math.Abs(one.Item1 - other.Item1) + Math.Abs(one.Item2 - other.Item2) < 1e-12);
        Assert.Equal((0, 1), wall.Run);
    }

    [Fact]
    public void Another_material_or_height_or_a_gap_is_another_wall()
    {
        Assert.Equal(2, Joined(Wall(0, 4, Full, 1), Wall(4, 9, Full, 2)).Count);
        Assert.Equal(2, Joined(Wall(0, 4, Full, 1), Wall(4, 9, Full with { High = 2, UnderCeiling = false }, 1)).Count);
        Assert.Equal(2, Joined(Wall(0, 4, Full, 1), Wall(4.001, 9, Full, 1)).Count);
        Assert.Equal(2, Joined(Wall(0, 5, Full, 1), Wall(4, 9, Full, 1)).Count);
    }

    [Fact]
    public void Parts_of_one_run_know_where_it_lies()
    {
        IReadOnlyList<JoinedWall> walls = Joined(Wall(0, 4, Full, 1), Wall(4, 6, Full, 2), Wall(6, 10, Full, 1));
        Assert.Equal([(0.0, 2.5), (-2, 3), (-1.5, 1)], walls.Select(wall => wall.Run));
    }

    private static IReadOnlyList<JoinedWall> Joined(params WallPanel[] walls) => JoinedWall.Of(StraightRun.Of(walls), walls);

    private static WallPanel Wall(double from, double to, VerticalExtent rise, int material, params OpeningPanel[] openings) =>
        new(new Point2(from, 1), new Point2(to, 1), rise, 0, material, 0, openings);
}
