using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Tests.Judges;
using LinkMargin.Engine.Tests.Propagation;

namespace LinkMargin.Engine.Tests.Paths.Diffuse;

/// <summary>
/// The diffuse field against a count of rays, for a console in the next room, for one in a rack with one open side, and for one in a box
/// with a lid.
/// </summary>
public sealed class RayCountTests
{
    // What is left between an even field in every cell and the rays: asked for by the design of the field.
    private const double SameDb = 1.5;

    private const int Rays = 300_000;
    private const double BallMetres = 0.3;
    private const double LargeBallMetres = 0.6; // where few rays come

    private static readonly Point3 Room = new(5, 4, 2.5);

    [Theory]
    [InlineData(1.5, 1.0, 1.0)]
    [InlineData(3.5, 3.2, 1.5)]
    [InlineData(6.5, 2.0, 1.2)]
    [InlineData(8.0, 3.0, 0.8)]
    public void Two_rooms(double x, double y, double z)
    {
        Material wall = Brick, between = Stud;
        RoomGrid.Side[] sides = RoomGrid.Sides([0, 5, 9], [0, 4]);
        House house = SimpleHouse.Of(new Level("level", 0, Room.Z)
        {
            Rooms = RoomGrid.Rooms([0, 5, 9], [0, 4]),
            Walls = [.. sides.Select((side, i) => new Wall($"wall {i}", side.Start, side.End, 0, Room.Z, side.IsOuter ? wall : between))],
        });
        var diffuse = new DiffuseHouse(house);
        (double Passes, double Scatters) outer = Of(diffuse, wall), inner = Of(diffuse, between);
        RayCount.Surface[] surfaces =
        [
            .. RayCount.Box(new(0, 0, 0), Room, face => face == 1 ? inner : Face(diffuse, face, outer)),
            .. RayCount.Box(new(5, 0, 0), new(9, 4, Room.Z), face => Face(diffuse, face, outer)).Where((_, face) => face != 3),
        ];
        var console = new Point3(1, 2.8, 0.7);
        var place = new Point3(x, y, z);
        AreAlike(diffuse, new RayCount(surfaces, Furnishing), console, place, place.X > 5 ? LargeBallMetres : BallMetres);
    }

    [Theory]
    [InlineData(3.3, 1.5, 2.0)] // in front of the open side
    [InlineData(3.3, 3.2, 3.2)] // beside the rack
    [InlineData(3.3, 4.0, 2.0)] // behind it
    [InlineData(3.3, 4.6, 1.0)]
    [InlineData(4.67, 1.5, 2.0)] // in front of one that stands against a wall
    [InlineData(4.67, 4.0, 2.0)]
    [InlineData(4.67, 3.6, 3.2)]
    [InlineData(4.67, 4.6, 1.0)] // beside it
    public void A_rack_with_one_open_side(double rackAt, double x, double y)
    {
        Material wall = Stud, steel = SimpleHouse.Material("steel", 40);
        RoomGrid.Side[] sides = RoomGrid.Sides([0, 5], [0, 4]);
        var rack = new Fixture("rack", 0, new Point2(rackAt, 2), 0.6, 0.6, 0, 0.2, 2.0, steel) { IsShell = true, OpenSides = BoxSides.West };
        House house = SimpleHouse.Of(new Level("level", 0, Room.Z)
        {
            Rooms = RoomGrid.Rooms([0, 5], [0, 4]),
            Walls = [.. sides.Select((side, i) => new Wall($"wall {i}", side.Start, side.End, 0, Room.Z, wall))],
        }) with
        {
            Fixtures = [rack],
        };
        var diffuse = new DiffuseHouse(house);
        (double Passes, double Scatters) outer = Of(diffuse, wall), panel = Of(diffuse, steel);
        RayCount.Surface[] surfaces =
        [
            .. RayCount.Box(new(0, 0, 0), Room, face => Face(diffuse, face, outer)),
            .. RayCount.Box(new(rackAt - 0.3, 1.7, 0.2), new(rackAt + 0.3, 2.3, 2.0), _ => panel).Where((_, face) => face != 3),
        ];
        AreAlike(diffuse, new RayCount(surfaces, at => IsIn(at) ? 0 : Furnishing(at)), new Point3(rackAt + 0.1, 2, 1), new Point3(x, y, 1.1), BallMetres);

        bool IsIn(Point3 at) => Math.Abs(at.X - rackAt) < 0.3 && at.Y is > 1.7 and < 2.3 && at.Z is > 0.2 and < 2;
    }

    [Theory]
    [InlineData(3.5, 3.2, 1.5)]
    [InlineData(6.5, 2.0, 1.2)] // in the next room
    [InlineData(8.0, 3.0, 0.8)]
    public void A_rack_against_a_wall_heard_in_two_rooms(double x, double y, double z)
    {
        Material wall = Brick, between = Stud, steel = SimpleHouse.Material("steel", 40);
        RoomGrid.Side[] sides = RoomGrid.Sides([0, 5, 9], [0, 4]);
        House house = SimpleHouse.Of(new Level("level", 0, Room.Z)
        {
            Rooms = RoomGrid.Rooms([0, 5, 9], [0, 4]),
            Walls = [.. sides.Select((side, i) => new Wall($"wall {i}", side.Start, side.End, 0, Room.Z, side.IsOuter ? wall : between))],
        }) with
        {
            Fixtures = [new Fixture("rack", 0, new Point2(0.33, 2), 0.6, 0.6, 0, 0.2, 2.0, steel) { IsShell = true, OpenSides = BoxSides.East }],
        };
        var diffuse = new DiffuseHouse(house);
        (double Passes, double Scatters) outer = Of(diffuse, wall), inner = Of(diffuse, between), panel = Of(diffuse, steel);
        RayCount.Surface[] surfaces =
        [
            .. RayCount.Box(new(0, 0, 0), Room, face => face == 1 ? inner : Face(diffuse, face, outer)),
            .. RayCount.Box(new(5, 0, 0), new(9, 4, Room.Z), face => Face(diffuse, face, outer)).Where((_, face) => face != 3),
            .. RayCount.Box(new(0.03, 1.7, 0.2), new(0.63, 2.3, 2.0), _ => panel).Where((_, face) => face != 1),
        ];
        var place = new Point3(x, y, z);
        AreAlike(
            diffuse, new RayCount(surfaces, at => IsIn(at) ? 0 : Furnishing(at)), new Point3(0.23, 2, 1), place, place.X > 5 ? LargeBallMetres : BallMetres);

        static bool IsIn(Point3 at) => at.X is > 0.03 and < 0.63 && at.Y is > 1.7 and < 2.3 && at.Z is > 0.2 and < 2;
    }

    [Theory]
    [InlineData(20, 1.5, 2.0, 1.1)]
    [InlineData(20, 3.3, 2.0, 2.1)] // over the lid
    [InlineData(20, 4.4, 1.0, 0.8)] // behind the box
    [InlineData(40, 1.5, 2.0, 1.1)]
    [InlineData(40, 3.3, 2.0, 2.1)]
    public void A_closed_box_with_a_lid_of_its_own(double wallsDb, double x, double y, double z)
    {
        // Next to all that leaves has come through the lid, whatever the walls lose.
        Material wall = Stud, steel = SimpleHouse.Material("steel", wallsDb), board = SimpleHouse.Material("board", 3);
        RoomGrid.Side[] sides = RoomGrid.Sides([0, 5], [0, 4]);
        var box = new Fixture("box", 0, new Point2(3.3, 2), 0.8, 0.7, 0, 0.1, 1.3, steel)
        {
            IsShell = true,
            SideMaterials = new Dictionary<BoxSides, Material> { [BoxSides.Top] = board },
        };
        House house = SimpleHouse.Of(new Level("level", 0, Room.Z)
        {
            Rooms = RoomGrid.Rooms([0, 5], [0, 4]),
            Walls = [.. sides.Select((side, i) => new Wall($"wall {i}", side.Start, side.End, 0, Room.Z, wall))],
        }) with
        {
            Fixtures = [box],
        };
        var diffuse = new DiffuseHouse(house);
        (double Passes, double Scatters) outer = Of(diffuse, wall), panel = Of(diffuse, steel), lid = Of(diffuse, board);
        RayCount.Surface[] surfaces =
        [
            .. RayCount.Box(new(0, 0, 0), Room, face => Face(diffuse, face, outer)),
            .. RayCount.Box(new(2.9, 1.65, 0.1), new(3.7, 2.35, 1.3), face => face == 5 ? lid : panel),
        ];
        AreAlike(diffuse, new RayCount(surfaces, at => IsIn(at) ? 0 : Furnishing(at)), new Point3(3.4, 2.1, 0.5), new Point3(x, y, z), BallMetres);

        static bool IsIn(Point3 at) => at.X is > 2.9 and < 3.7 && at.Y is > 1.65 and < 2.35 && at.Z is > 0.1 and < 1.3;
    }

    private static void AreAlike(DiffuseHouse diffuse, RayCount rays, Point3 console, Point3 place, double ballMetres)
    {
        double counted = rays.Density(console, place, ballMetres, Rays, 2, seed: 1);
        double computed = diffuse.Of(console).At(place);
        Assert.Equal(Decibels.FromPowerRatio(counted), Decibels.FromPowerRatio(computed), SameDb);
    }

    // Floor and ceiling are what stands round the house: the ground and its top ceiling.
    private static (double Passes, double Scatters) Face(DiffuseHouse diffuse, int face, (double Passes, double Scatters) wall) => face switch
    {
        4 => Of(diffuse, diffuse.Scene.House.Surroundings.Ground),
        5 => Of(diffuse, diffuse.Scene.House.Surroundings.TopCeiling),
        _ => wall,
    };

    private static Material Brick { get; } = SimpleHouse.Material("brick", 9) with { Layers = SubstanceTable.Layers("brick 100") };

    private static Material Stud { get; } =
        SimpleHouse.Material("stud", 4) with { Layers = SubstanceTable.Layers("plasterboard 12.5 + air 75 + plasterboard 12.5") };

    private static (double Passes, double Scatters) Of(DiffuseHouse diffuse, Material material)
    {
        var table = diffuse.Losses[diffuse.Scene.NumberOf(material)];
        return (table.DiffuseTransmittance, table.DiffuseReflectance);
    }

    // What stands about, spread through the air: an absorbing area A in a volume V meets a ray each 4V/A (Cauchy).
    private static double Furnishing(Point3 at) => SurfaceSurvey.FurnishingShare / (4 * Room.Z);
}
