using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Paths.Diffuse;

/// <summary>A player takes from the diffuse field what a body absorbs, once, and casts no shadow in it.</summary>
public sealed class PlayerInRoomTests
{
    [Theory]
    [InlineData(0.0)]
    [InlineData(180.0)]
    [InlineData(null)]
    public void The_diffuse_field_pays_what_the_body_absorbs_whichever_way_it_faces(double? facing)
    {
        PathBudget diffuse = Assert.Single(
            Links.OneLink.Of(Room(), new Point3(1, 1, 1), new Point3(6, 4, 0.7), facing).Paths, path => path.Path.Kind == PathKind.Diffuse);

        // A person is 0.9 m² of perfect absorber. The walls, floor and ceiling of this room are 145 m², a third to a half of it absorbing.
        double mostDb = 10 * Math.Log10(1 + (0.95 / 30)), leastDb = 10 * Math.Log10(1 + (0.85 / 145));
        Assert.InRange(diffuse.BodyDb, leastDb, mostDb);
    }

    [Fact]
    public void A_body_takes_as_much_as_that_much_more_absorber_in_the_room()
    {
        var model = new LinkModel(Room());
        Spot spot = new("spot", 0, new Point2(1, 1), 1);
        DiffuseRooms rooms =
            ((FullSpotModel)model.For(spot)).Finder<DiffusePaths>().Rooms;
        double[] power = new double[rooms.Cells.Count];
        power[0] = 1;
        double before = rooms.Shell.Balance.Flux(power)[0], share = rooms.PlayerShare(0);
        rooms.Shell.Balance.Absorb(0, rooms.House.Body.AbsorbingSquareMetres);

        Assert.Equal(rooms.Shell.Balance.Flux(power)[0] / before, share, 1e-9);
        Assert.InRange(rooms.House.Body.AbsorbingSquareMetres / 4, 0.18, 0.45); // absorption cross sections measured, 1 GHz to 8.5 GHz
    }

    // Two ways to the same area: the series of a cylinder, and the mean over all angles of what a flat surface of flesh does not reflect.
    [Fact]
    public void Somebody_on_another_seat_absorbs_about_as_much_as_the_player()
    {
        var seat = new Seat("seat", 0, new Point2(4, 2), 0.7, 90, 15);
        double Absorbing(LinkModel model) =>
            1 / ((FullSpotModel)model.For(new Spot("spot", 0, new Point2(1, 1), 1))).Finder<DiffusePaths>().Rooms.Shell.Balance.Flux([1])[0];
        var alone = new LinkModel(Room());
        double more = Absorbing(new LinkModel(Room(), ModelDepth.Full, [seat])) - Absorbing(alone);
        double own = ((FullSpotModel)alone.For(new Spot("spot", 0, new Point2(1, 1), 1))).House.Body.AbsorbingSquareMetres;

        Assert.InRange(more / own, 0.8, 1.25);
    }

    [Fact]
    public void Out_of_doors_and_inside_of_furniture_there_is_no_player()
    {
        var model = new LinkModel(Room());
        DiffuseRooms rooms =
            ((FullSpotModel)model.For(new Spot("spot", 0, new Point2(1, 1), 1))).Finder<DiffusePaths>().Rooms;
        Assert.Equal(1, rooms.PlayerShare(Cells.Outdoors));
        Assert.Equal(1, rooms.PlayerShare(rooms.Cells.Count));
    }

    private static House Room()
    {
        Point2[] corners = [new(0, 0), new(8, 0), new(8, 5), new(0, 5)];
        Wall[] walls = [.. corners.Select((c, i) => SimpleHouse.FullWall($"wall {i}", c, corners[(i + 1) % 4], 10))];
        var level = new Level("level", 0, SimpleHouse.HeightMetres) { Walls = walls, Rooms = [new Room("room", new Polygon(corners))] };
        return SimpleHouse.Of(level);
    }
}
