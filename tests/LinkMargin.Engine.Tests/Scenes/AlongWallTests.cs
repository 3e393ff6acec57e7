using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Scenes;

/// <summary>A place in the middle of a wall, and a line that leaves it along the wall.</summary>
public sealed class AlongWallTests
{
    // A hair to either side of the wall's plane.
    private const double AsideMetres = 1e-5;

    private static readonly House WithWall = SimpleHouse.OfWalls(SimpleHouse.FullWall("wall", new(0, 0), new(3, 0), 15));

    [Theory]
    [InlineData(5, 1.2)]
    [InlineData(5, 0.3)]
    [InlineData(-2, 2)]
    public void What_leaves_the_middle_of_a_wall_along_it_loses_as_much_as_a_hair_to_either_side(double x, double z)
    {
        var inWall = new Point3(1.5, 0, 1);
        double along = PassedDb(inWall, new Point3(x, 0, z));
        Assert.InRange(along, -100, -10);
        foreach (int side in (int[])[-1, 1])
        {
            var aside = new Point3(x, side * AsideMetres, z);
            Assert.Equal(PassedDb(inWall, aside), along, 1e-3);
            Assert.Equal(PassedDb(aside, inWall), along, 1e-3);
        }
    }

    [Fact]
    public void A_line_past_both_ends_of_a_wall_in_its_plane_is_not_in_it() =>
        Assert.Equal(0, PassedDb(new Point3(-2, 0, 1), new Point3(5, 0, 1.2)), 1e-9);

    private static double PassedDb(Point3 from, Point3 to) => -OneFront.LossDb(WithWall, from, to);
}
