using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Scenes;

/// <summary>A wall of 4 m along x with one opening from 1 m to 2 m, sill 0.5 m, head 1.5 m.</summary>
public sealed class OpeningTests
{
    private const double Away = 3;

    [Fact]
    public void A_shut_door_is_met_instead_of_its_wall()
    {
        Crossing door = Assert.Single(Through(Leaf(1), isOpen: false, 1.5, 1));
        Assert.Equal((ObstacleKind.Opening, "door", "leaf"), (door.Kind, door.Name, door.Material.Name));
        Crossing wall = Assert.Single(Through(Leaf(1), isOpen: false, 2.5, 1));
        Assert.Equal((ObstacleKind.Wall, "wall", "wall"), (wall.Kind, wall.Name, wall.Material.Name));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void An_open_door_and_a_bare_gap_are_nothing(bool isOpen) =>
        Assert.Empty(Through(isOpen ? Leaf(1) : null, isOpen, 1.5, 1));

    [Theory] // sill, head and both jambs, a millimetre to each side
    [InlineData(0.999, 1, "wall")]
    [InlineData(1.001, 1, "door")]
    [InlineData(1.999, 1, "door")]
    [InlineData(2.001, 1, "wall")]
    [InlineData(1.5, 0.499, "wall")]
    [InlineData(1.5, 0.501, "door")]
    [InlineData(1.5, 1.499, "door")]
    [InlineData(1.5, 1.501, "wall")]
    public void An_opening_ends_at_its_jambs_sill_and_head(double x, double z, string expected) =>
        Assert.Equal(expected, Assert.Single(Through(Leaf(1), isOpen: false, x, z)).Name);

    [Theory] // the wall loses 3 dB
    [InlineData(1, 1, 1.0, "wall")]
    [InlineData(2, 1, 1.0, "wall")]
    [InlineData(1, 1, 9.0, "door")]
    [InlineData(1.5, 0.5, 9.0, "door")]
    [InlineData(1.5, 1.5, 1.0, "wall")]
    [InlineData(2, 1.5, 9.0, "door")]
    public void On_its_edge_the_one_that_takes_most_counts(double x, double z, double leafDb, string expected) =>
        Assert.Equal(expected, Assert.Single(Through(Leaf(leafDb), isOpen: false, x, z)).Name);

    [Fact]
    public void On_the_edge_of_an_open_door_the_wall_counts() =>
        Assert.Equal("wall", Assert.Single(Through(Leaf(9), isOpen: true, 1, 1)).Name);

    [Theory]
    [InlineData(1.1, 0, 1)]
    [InlineData(1.1 + 1e-6, 0, 0)]
    [InlineData(0.6, 0.3, 1)]
    [InlineData(0.9, 0.6, 0)] // rises over the top on its way: 1.2 at the wall
    public void A_low_wall_is_in_the_way_up_to_its_top(double z, double rise, int expected)
    {
        Wall low = SimpleHouse.FullWall("low", new Point2(0, 0), new Point2(4, 0), 3) with { TopMetres = 1.1 };
        Assert.Equal(
            expected,
            SimpleHouse.Crossings(SimpleHouse.OfWalls(low), new Point3(2, -1, z), new Point3(2, 1, z + rise)).Count);
    }

    [Theory]
    [InlineData(0.0005, 1)] // a wall that stops half a millimetre under the ceiling goes on to the floor above
    [InlineData(0.002, 0)]
    public void A_full_wall_leaves_no_gap_under_the_floor_above(double shortMetres, int expected)
    {
        Wall wall = SimpleHouse.FullWall("wall", new Point2(0, 0), new Point2(4, 0), 3);
        Level lower = new("lower", 0, SimpleHouse.HeightMetres)
        {
            Walls = [wall with { TopMetres = SimpleHouse.HeightMetres - shortMetres }],
        };
        House house = SimpleHouse.Of(lower, new Level("upper", 2.8, SimpleHouse.HeightMetres));
        Assert.Equal(expected, SimpleHouse.Crossings(house, new Point3(2, -1, 2.6), new Point3(2, 1, 2.6)).Count);
    }

    private static IReadOnlyList<Crossing> Through(Material? leaf, bool isOpen, double x, double z)
    {
        Wall wall = SimpleHouse.FullWall("wall", new Point2(0, 0), new Point2(4, 0), 3) with
        {
            Material = SimpleHouse.Material("wall", 3),
            Openings = [new Opening("door", OpeningKind.Door, 1, 1, 0.5, 1, leaf, isOpen)],
        };
        return SimpleHouse.Crossings(SimpleHouse.OfWalls(wall), new Point3(x, -Away, z), new Point3(x, Away, z));
    }

    private static Material Leaf(double lossDb) => SimpleHouse.Material("leaf", lossDb);
}
