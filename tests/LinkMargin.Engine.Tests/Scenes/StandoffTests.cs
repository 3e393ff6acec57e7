using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Scenes;

/// <summary>Where the ends of links are computed: 2 cm off every surface, or in the middle of a narrower gap. Worked by hand.</summary>
public sealed class StandoffTests
{
    private const double HairMetres = 1e-5; // too close to a surface to tell its sides apart

    private static readonly Material Board = SimpleHouse.Material("board", 4);

    // A wall along y = 0 with a doorway from x = 4 to x = 5, one along x = 0, and one along y = −3 cm for x from 7 to 9.
    private static readonly House Walls = SimpleHouse.OfWalls(
        SimpleHouse.FullWall("south", new(0, 0), new(9, 0), 4) with { Openings = [new Opening("gap", OpeningKind.Gap, 4, 1, 0, 2, null, true)] },
        SimpleHouse.FullWall("west", new(0, 0), new(0, 9), 4),
        SimpleHouse.FullWall("near", new(7, -0.03), new(9, -0.03), 4));

    private static readonly Fixture Rack = new("rack", 0, new Point2(5, 5), 2, 1, 0, 0.5, 1.5, Board) { IsShell = true, OpenSides = BoxSides.North };

    [Theory]
    [InlineData(3, 1, 1, 3, 1, 1)] // in the air
    [InlineData(3, 0.02, 1, 3, 0.02, 1)] // just far enough
    [InlineData(3, 0.005, 1, 3, 0.02, 1)] // before the wall, on one side
    [InlineData(3, -0.005, 1, 3, -0.02, 1)] // and on the other
    [InlineData(3, 0.005, 0.01, 3, 0.02, 0.02)] // and over the floor
    [InlineData(3, 0.005, 2.395, 3, 0.02, 2.38)] // and under the ceiling
    [InlineData(3, 1, 0, 3, 1, 0.02)] // on the floor
    [InlineData(0.01, 0.015, 1, 0.02, 0.02, 1)] // in a corner
    [InlineData(4.5, 0.005, 1, 4.5, 0.005, 1)] // in the doorway
    [InlineData(4.01, 0, 1, 4.02, 0, 1)] // beside its jamb
    [InlineData(4.5, 0.005, 2.1, 4.5, 0.02, 2.1)] // before the wall above it
    [InlineData(8, -0.01, 1, 8, -0.015, 1)] // in a gap of 3 cm
    [InlineData(8, -0.029, 1, 8, -0.015, 1)]
    public void An_end_keeps_off_walls_floors_and_ceilings(double x, double y, double z, double toX, double toY, double toZ) =>
        IsComputedAt(Walls, new(x, y, z), new(toX, toY, toZ));

    [Theory]
    [InlineData(5, 4.49, 1, 5, 4.48, 1)] // before a panel
    [InlineData(5, 4.51, 1, 5, 4.52, 1)] // behind it, in the shell
    [InlineData(5, 5.499, 1, 5, 5.499, 1)] // in the open side
    [InlineData(5, 5, 1.5, 5, 5, 1.52)] // on the lid
    [InlineData(5, 5, 1.5 - HairMetres, 5, 5, 1.52)]
    [InlineData(5, 5, 0.5, 5, 5, 0.52)] // on the bottom, inside
    [InlineData(5, 5, 0.5 - HairMetres, 5, 5, 0.52)]
    [InlineData(5, 4.5, 1, 5, 4.48, 1)] // on a side, outside
    [InlineData(4.01, 4.51, 0.51, 4.02, 4.52, 0.52)] // in a corner of the inside
    public void An_end_keeps_off_the_panels_of_a_shell(double x, double y, double z, double toX, double toY, double toZ) =>
        IsComputedAt(SimpleHouse.OfFixture(Rack), new(x, y, z), new(toX, toY, toZ));

    [Fact]
    public void A_void_in_a_floor_is_no_surface()
    {
        var hole = new Polygon([new(1, 1), new(2, 1), new(2, 2), new(1, 2)]);
        var slab = new FloorBuildUp("slab", [new FloorLayer(Board, 0.2, null)], "invented for tests");
        House house = SimpleHouse.Of(new Level("lower", 0, 2.4) { Above = new FloorAbove(slab, null, [hole]) }, new Level("upper", 2.6, 2.4));
        double floor = house.Levels[1].ElevationMetres;
        IsComputedAt(house, new(1.5, 1.5, floor + 0.01), new(1.5, 1.5, floor + 0.01));
        IsComputedAt(house, new(2.5, 1.5, floor + 0.01), new(2.5, 1.5, floor + 0.02));
    }

    [Fact]
    public void An_end_on_an_upper_floor_under_a_solid_that_stands_there_stays_above_the_floor()
    {
        var slab = new FloorBuildUp("slab", [new FloorLayer(Board, 0.2, null)], "invented for tests");
        House house = SimpleHouse.Of(new Level("lower", 0, 2.4) { Above = new FloorAbove(slab, null, []) }, new Level("upper", 2.6, 2.4)) with
        {
            Fixtures = [new Fixture("chest", 1, new Point2(5, 5), 2, 1, 0, 0, 1, Board)],
        };
        double floor = house.Levels[1].ElevationMetres;
        IsComputedAt(house, new(5, 5, floor), new(5, 5, floor + 0.02));
    }

    [Fact, Law]
    public void An_end_is_never_moved_through_a_surface_nor_by_much() =>
        Gen.Select(RandomHouse.Any, Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[-0.03, 0.03], Gen.Double[-0.03, 0.03]).ForAll(
            (house, which, share, east, north) =>
            {
                var scene = Scene.Compile(house);
                foreach (Level level in house.Levels.Where(level => level.Walls.Count > 0))
                {
                    Wall wall = level.Walls[(int)(which * (level.Walls.Count - 1))];
                    Point3 place = (wall.Start + (share * (wall.End - wall.Start)) + new Point2(east, north)).At(level.ElevationMetres + (share * level.HeightMetres));
                    Point3 end = Of(scene, place);
                    Assert.InRange(place.DistanceTo(end), 0, 3 * Standoff.Metres);
                    var buffer = new TraceBuffer();
                    scene.Trace(place.Towards(end, 0.01), end, buffer);

                    // A surface that it starts on is met at its start.
                    Assert.DoesNotContain(buffer.Hits.ToArray(), hit => hit is { IsSolid: false, Along: > 0 });
                }
            },
            cases: 300,
            also: [6541187363658761240, 2648974669896563060, 6417668966499233456, 7398374988105577143, 7277348428137993864, 7942878788955245644]);

    // The paths that are listed end where they are computed.
    private static void IsComputedAt(House house, Point3 place, Point3 expected)
    {
        var scene = Scene.Compile(house);
        Point3 end = Of(scene, place);
        Assert.Equal(0, end.DistanceTo(expected), HairMetres + 1e-9);

        var model = new LinkModel(house);
        Point3 console = new(2.5, 3, 1.2);
        IReadOnlyList<Point3> direct = model.For(new Spot("spot", 0, console.Plan, console.Z)).Paths(place, null)
            .Single(path => path.Path.Kind == PathKind.Direct).Path.Points;
        Assert.Equal([console, end], direct);
    }

    private static Point3 Of(Scene scene, Point3 place)
    {
        int[] candidates = new int[1];
        return new Standoff(scene).Of(place, ref candidates);
    }
}
