using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>A way that leaves its straight line says by what, where and on which level.</summary>
public sealed class PathTurnTests
{
    [Fact]
    public void A_way_thrown_back_names_the_wall_of_the_level_it_meets()
    {
        // The same plane on both levels: one mirror, two walls. Console and seat are on the upper level.
        House house = TwoStoreys(
            new Wall("lower wall", new Point2(0, 0), new Point2(8, 0), 0, 2.4, SimpleHouse.Material("brick", 6)),
            new Wall("upper wall", new Point2(0, 0), new Point2(8, 0), 0, 2.4, SimpleHouse.Material("brick", 6)));

        PathBudget[] reflected = Ways(house, PathKind.Reflected);

        PathTurn turn = Assert.Single(reflected.SelectMany(path => path.Turns), t => t.Kind == TurnKind.Wall);
        Assert.Equal(("upper wall", 1), (turn.Name, turn.LevelIndex));

        // Console and hands are 1 m from the wall and 6 m apart: thrown back half way, at 3 m along and 1 m across.
        Assert.Equal(Math.Sqrt(10), turn.DistanceMetres, 0.01);
        Assert.Equal(double.RadiansToDegrees(Math.Atan(3)), turn.IncidenceDegrees!.Value, 0.5);
    }

    [Fact]
    public void A_way_thrown_back_by_a_floor_names_its_level()
    {
        PathBudget[] reflected = Ways(TwoStoreys(null, null), PathKind.Reflected);

        Assert.Contains(reflected, path => path.Turns is [{ Kind: TurnKind.Floor, Name: "upper", LevelIndex: 1 }]);
        Assert.Contains(reflected, path => path.Turns is [{ Kind: TurnKind.Ceiling, Name: "upper", LevelIndex: 1 }]);
    }

    [Fact]
    public void A_way_round_a_corner_names_the_door_it_goes_through()
    {
        // A wall that nothing passes, with an open door well off the straight line.
        Material stone = SimpleHouse.Material("stone", 60);
        var wall = new Wall("wall", new Point2(3, -20), new Point2(3, 20), 0, 2.4, stone)
        {
            Openings = [new Opening("side door", OpeningKind.Door, 22.5, 0.8, 0, 2.0, stone, true)],
        };
        House house = SimpleHouse.OfWalls(wall) with
        {
            Spots = [new Spot("spot", 0, default, 1)],
            Seats = [new Seat("seat", 0, new Point2(7, 0), 1, null, 15)],
        };

        PathBudget around = Ways(house, PathKind.Diffracted)[0]; // the strongest; the others go round the far ends of the wall

        PathTurn turn = Assert.Single(around.Turns);
        Assert.Equal((TurnKind.Opening, "side door", 0), (turn.Kind, turn.Name, turn.LevelIndex));
        Assert.Equal(Math.Sqrt(9 + (2.54 * 2.54)), turn.DistanceMetres, 0.01); // 4 cm clear of the nearer jamb
        Assert.Null(turn.IncidenceDegrees);
    }

    [Fact]
    public void A_way_round_the_outer_corner_of_two_walls_names_it_and_no_other_joint_is_a_corner()
    {
        // Two walls that meet at (3, 1), one of them in two parts, which meet straight.
        Material stone = SimpleHouse.Material("stone", 60);
        House house = SimpleHouse.OfWalls(
            new Wall("south", new Point2(3, 1), new Point2(3, -10), 0, 2.4, stone),
            new Wall("south, on", new Point2(3, -10), new Point2(3, -20), 0, 2.4, stone),
            new Wall("east", new Point2(3, 1), new Point2(30, 1), 0, 2.4, stone)) with
        {
            Spots = [new Spot("spot", 0, new Point2(0, -2), 1)],
            Seats = [new Seat("seat", 0, new Point2(12, 1.8), 1, null, 15)],
        };

        PathTurn[] corners = [.. Ways(house, PathKind.Diffracted).SelectMany(way => way.Turns).Where(turn => turn.Kind == TurnKind.WallCorner)];

        Assert.All(corners, turn => Assert.Equal("east", turn.Name));
        Assert.NotEmpty(corners);
    }

    [Fact]
    public void A_way_round_a_large_fixture_that_nothing_passes_names_it()
    {
        var rack = new Fixture("rack", 0, new Point2(3.5, 0), 0.6, 3.4, 0, 0, 2, SimpleHouse.Material("steel", 60));
        House house = SimpleHouse.OfWalls() with
        {
            Fixtures = [rack],
            Spots = [new Spot("spot", 0, default, 1)],
            Seats = [new Seat("seat", 0, new Point2(7, 0), 1, null, 15)],
        };

        // One way on each side; the second corner on either is within reach of its last leg, and counts there.
        PathBudget[] ways = Ways(house, PathKind.Diffracted);
        Assert.Equal(2, ways.Length);
        Assert.All(ways, way => Assert.True(way.Turns is [{ Kind: TurnKind.FixtureCorner, Name: "rack" }]));
        Assert.All(ways, way => Assert.Equal(ways[0].LossDb, way.LossDb, 1e-9));
        Assert.Empty(Ways(house with { Fixtures = [rack with { Material = SimpleHouse.Material("cloth", 1) }] }, PathKind.Diffracted));
    }

    [Fact]
    public void The_straight_line_and_the_diffuse_field_have_no_turns()
    {
        Assert.All(
            [.. Ways(TwoStoreys(null, null), PathKind.Direct), .. Ways(TwoStoreys(null, null), PathKind.Diffuse)],
            path => Assert.Empty(path.Turns));
    }

    private static PathBudget[] Ways(House house, PathKind kind) =>
        [.. LinkEvaluation.Budget(new LinkModel(house), house.Spots[0], house.Seats[0]).Paths.Where(path => path.Path.Kind == kind)];

    private static House TwoStoreys(Wall? lower, Wall? upper)
    {
        var board = new FloorBuildUp("board", [new(SimpleHouse.Material("board", 3), 0.2, null)], "invented for tests");
        var room = new Room("room", new Polygon([new(0, 0), new(8, 0), new(8, 5), new(0, 5)]));
        return SimpleHouse.Of(
            new Level("lower", 0, 2.4) { Walls = lower is null ? [] : [lower], Rooms = [room], Above = new FloorAbove(board, null, []) },
            new Level("upper", 2.6, 2.4) { Walls = upper is null ? [] : [upper], Rooms = [room] }) with
        {
            Spots = [new Spot("spot", 1, new Point2(1, 1), 1)],
            Seats = [new Seat("seat", 1, new Point2(7, 1), 1, null, 15)],
        };
    }
}
