using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Runs;

/// <summary>Routes worked by hand, against an exhaustive search, and by laws.</summary>
public sealed class RouteTests
{
    private const double Height = SimpleHouse.HeightMetres;

    private static readonly Material Plaster = SimpleHouse.Material("plaster", 3) with { ThicknessMetres = 0.1 };

    /// <summary>From a socket 0.5 m up at the south wall to one 0.5 m up at the east wall: 0.5 down, 1.5 + 2 along, 0.5 up.</summary>
    [Fact]
    public void In_a_room_a_cable_follows_the_walls_at_the_floor()
    {
        Route route = Find(OneLevel(Room("den", 0, 0, 4, 3)), End("a", 0, 2.5, 0, 0.5), End("b", 0, 4, 2, 0.5));
        Assert.Equal(0.5 + 1.5 + 2 + 0.5, route.LengthMetres, 1e-9);
        Assert.Equal(0, route.Holes);
        Assert.Equal([LegKind.ToWall, LegKind.AlongFloor, LegKind.AlongFloor, LegKind.ToWall], route.Legs.Select(leg => leg.Kind));
    }

    /// <summary>A door between them: over it, under the ceiling.</summary>
    [Fact]
    public void A_doorway_is_no_way_for_a_cable()
    {
        House house = OneLevel(Room("den", 0, 0, 4, 3));
        Level level = house.Levels[0];
        Wall[] walls = [.. level.Walls.Select((wall, i) => i > 0 ? wall : wall with { Openings = [new Opening("door", OpeningKind.Door, 1, 0.8, 0, 2, null, false)] })];
        Route route = Find(house with { Levels = [level with { Walls = walls }] }, End("a", 0, 0.5, 0, 0.5), End("b", 0, 3, 0, 0.5));
        Assert.Equal((2 * (Height - 0.5)) + 2.5, route.LengthMetres, 1e-9);
        Assert.Contains(route.Legs, leg => leg.Kind == LegKind.AlongCeiling);
    }

    [Fact]
    public void Into_the_next_room_it_takes_one_hole_and_a_passage_saves_it()
    {
        House house = OneLevel(Room("den", 0, 0, 4, 3), Room("hall", 4, 0, 2, 3));
        CablePlace a = End("a", 0, 3.9, 1, 0.3), b = End("b", 0, 4.1, 1, 0.3);
        Route bored = Find(house, a, b);
        Assert.Equal(1, bored.Holes);
        Assert.Equal(LegKind.ThroughWall, bored.Legs.Single(leg => leg.Holes > 0).Kind);
        Assert.Equal(0.4 + 0.1 + 0.4, bored.LengthMetres, 1e-9); // to the wall and down, through it, up and out
        Route through = Find(With(house, new Passage("sleeve", 0, 0, new Point2(3.95, 2.5), new Point2(4.05, 2.5))), a, b);
        Assert.Equal((0, "sleeve"), (through.Holes, through.Passages.Single()));
        Assert.True(through.LengthMetres > bored.LengthMetres);
    }

    /// <summary>Joists run east: along them free, 1.2 m across them at 0.4 m is three joists, a hole each, and a hole up and a hole down.</summary>
    [Fact]
    public void In_a_floor_it_is_free_along_the_joists_and_bores_across_them()
    {
        House house = TwoLevels(null);
        Route along = Find(house, End("a", 0, 0, 0, Height - 0.1), End("b", 1, 4, 0, 0.1));
        Assert.Equal((2, 0), (along.Holes, along.JoistHoles));
        var floor = FloorSpace.Of(house, 0)!;
        Assert.Equal(0, floor.Crossed(1, 1));
        Assert.Equal(3, floor.Crossed(1, 2.2));
    }

    /// <summary>Joists at y = 0.2, 0.6, 1.0 and so on.</summary>
    [Theory]
    [InlineData(0.3, 0.5, 0)]
    [InlineData(0.3, 0.7, 1)]
    [InlineData(0.7, 0.3, 1)]
    [InlineData(0.1, 1.1, 3)]
    [InlineData(0.2, 0.6, 0)]
    public void Joists_whose_place_is_known_are_counted(double from, double to, int joists) =>
        Assert.Equal(joists, FloorSpace.Of(TwoLevels(0.2), 0)!.Crossed(from, to));

    [Fact]
    public void A_chase_between_levels_takes_no_hole()
    {
        House house = With(TwoLevels(null), new Passage("chase", 0, 1, new Point2(0.1, 2), new Point2(0.1, 2)));
        Route route = Find(house, End("a", 0, 0, 0, 0.5), End("b", 1, 0, 0, 0.5));
        Assert.Equal(0, route.Holes);
        Assert.Equal(["chase"], route.Passages);
    }

    /// <summary>Two sleeves 6 mm apart: the length to each is its own, whichever the file lists first.</summary>
    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 0)]
    public void Places_that_nearly_meet_do_not_hang_on_their_order(int first, int second)
    {
        Passage[] sleeves = [new("near", 0, 0, new Point2(4, 1), new Point2(4.1, 1)), new("next", 0, 0, new Point2(4, 1.006), new Point2(4.1, 1.006))];
        House house = OneLevel(Room("den", 0, 0, 4, 3), Room("hall", 4.1, 0, 2, 3));
        House listed = house with { Cabling = house.Cabling with { Passages = [sleeves[first], sleeves[second]] } };
        CablePlace a = End("a", 0, 4, 2, 0.3), b = End("b", 0, 4.1, 2, 0.3);
        Route route = new RouteSearch(new StructureGraph(listed, [a, b], _ => true)).Find(a, b)!;
        Assert.Equal(["next"], route.Passages);
        Assert.Equal(0.3 + (2 - 1.006) + 0.1 + (2 - 1.006) + 0.3, route.LengthMetres, 1e-9);
    }

    [Fact]
    public void Without_rooms_nothing_leads_anywhere() =>
        Assert.Null(Search(SimpleHouse.OfWalls(), End("a", 0, 0, 0, 0.5), End("b", 0, 4, 2, 0.5)));

    /// <summary>Four times the rooms take hardly more than four times the ways, so that a house of hundreds of rooms is searched in seconds.</summary>
    [Fact]
    public void Its_ways_grow_little_faster_than_a_house()
    {
        double few = Ways(5), many = Ways(10);
        Assert.InRange(many / few, 3, 5.5);

        static int Ways(int side) => new StructureGraph(Rooms(side), [], _ => true).Graph.EdgeCount;
    }

    /// <summary>Every simple path of a small house's graph, one by one.</summary>
    [Theory]
    [InlineData(0.5, 0, 4, 2)]
    [InlineData(0, 1, 2, 3)]
    [InlineData(1, 0, 3, 0)]
    public void The_route_is_the_best_of_all(double x, double y, double otherX, double otherY)
    {
        House house = With(OneLevel(Room("den", 0, 0, 4, 3)), new Passage("duct", 0, 0, new Point2(0, 2), new Point2(4, 1)));
        CablePlace a = End("a", 0, x, y, 0.4), b = End("b", 0, otherX, otherY, 0.6);
        var graph = new StructureGraph(house, [a, b], _ => true);
        ILookup<int, StructureEdge> from = graph.Graph.Edges.SelectMany(edge => new[] { edge, edge.Turned }).ToLookup(edge => edge.Source);
        double least = double.PositiveInfinity;
        HashSet<int> visited = [];
        Walk(graph.NodeOf(a), 0);
        Route route = new RouteSearch(graph).Find(a, b)!;
        Assert.Equal(least, (1e5 * route.Holes) + route.LengthMetres, 1e-6);

        void Walk(int at, double cost)
        {
            if (at == graph.NodeOf(b))
            {
                least = Math.Min(least, cost);
            }
            else if (visited.Add(at))
            {
                foreach (StructureEdge edge in from[at])
                {
                    Walk(edge.Target, cost + edge.Cost);
                }

                visited.Remove(at);
            }
        }
    }

    [Fact, Law]
    public void One_more_passage_never_makes_a_route_worse() =>
        Gen.Select(RoomedHouse.Any, Gen.Double[0.1, 4], Gen.Double[0.1, 4], Gen.Double[0.1, 4], Gen.Double[0.1, 4]).ForAll(
            (house, x, y, toX, toY) =>
            {
                int top = house.Levels.Count - 1;
                CablePlace a = new("a", house.Spots[0].LevelIndex, house.Spots[0].Plan, house.Spots[0].HeightMetres, null);
                CablePlace b = new("b", house.Seats[0].LevelIndex, house.Seats[0].Plan, house.Seats[0].HandsMetres, null);
                Route? before = Search(house, a, b);
                Route? after = Search(With(house, new Passage("more", 0, top, new Point2(x, y), new Point2(toX, toY))), a, b);
                if (before is not null)
                {
                    Assert.NotNull(after);
                    Assert.True(after.Holes < before.Holes || (after.Holes == before.Holes && after.LengthMetres <= before.LengthMetres + 1e-6), $"{before.Holes}, {before.LengthMetres} -> {after.Holes}, {after.LengthMetres}");
                }
            },
            cases: 40);

    [Fact, Law]
    public void A_route_is_as_good_backwards() =>
        RoomedHouse.Any.ForAll(
            house =>
            {
                CablePlace a = new("a", house.Spots[0].LevelIndex, house.Spots[0].Plan, house.Spots[0].HeightMetres, null);
                CablePlace b = new("b", house.Seats[0].LevelIndex, house.Seats[0].Plan, house.Seats[0].HandsMetres, null);
                var graph = new StructureGraph(house, [a, b], _ => true);
                Route? there = new RouteSearch(graph).Find(a, b), back = new RouteSearch(graph).Find(b, a); // each from its far end
                Assert.Equal(there?.Holes, back?.Holes);
                Assert.Equal(there?.LengthMetres ?? 0, back?.LengthMetres ?? 0, 1e-7); // of routes as long to 1e-8 m the one with fewer climbs is taken
                Assert.All(there?.Legs ?? [], leg => Assert.True(leg.LengthMetres >= leg.From.DistanceTo(leg.To) - 0.2, $"{leg}"));
            },
            cases: 40);

    private static Route Find(House house, CablePlace a, CablePlace b) => Search(house, a, b)!;

    private static Route? Search(House house, CablePlace a, CablePlace b) => new RouteSearch(new StructureGraph(house, [a, b], _ => true)).Find(a, b);

    private static House With(House house, Passage passage) => house with { Cabling = house.Cabling with { Passages = [.. house.Cabling.Passages, passage] } };

    private static CablePlace End(string name, int level, double x, double y, double height) => new(name, level, new Point2(x, y), height, null);

    private static Room Room(string name, double x, double y, double width, double depth) =>
        new(name, new Polygon([new(x, y), new(x + width, y), new(x + width, y + depth), new(x, y + depth)]));

    private static House OneLevel(params Room[] rooms) => SimpleHouse.Of(Level("level", 0, rooms));

    private static Level Level(string name, double elevation, params Room[] rooms) => new(name, elevation, Height)
    {
        Rooms = rooms,
        Walls = [.. rooms.SelectMany(room => room.Outline.Corners.Select((corner, i) =>
            new Wall($"{room.Name} {i}", corner, room.Outline.Corners[(i + 1) % 4], 0, Height, Plaster)))],
    };

    // Two levels of rooms of 3 m by 3 m, as many to a side.
    private static House Rooms(int side)
    {
        Room[] rooms = [.. Enumerable.Range(0, side * side).Select(i => Room($"{i}", 3 * (i % side), 3 * (i / side), 3, 3))];
        House small = TwoLevels(null);
        return SimpleHouse.Of(Level("low", 0, rooms) with { Above = small.Levels[0].Above }, Level("high", Height + 0.2, rooms));
    }

    private static House TwoLevels(double? firstJoist)
    {
        var joist = new Ribs(SimpleHouse.Material("joist", 5), 0.05, 0.2, 0.4);
        var floor = new FloorAbove(new FloorBuildUp("floor", [new FloorLayer(null, 0.2, joist)], "invented for tests"), new JoistLayout(0, 0.4, firstJoist), []);
        return SimpleHouse.Of(Level("low", 0, Room("den", 0, 0, 4, 3)) with { Above = floor }, Level("high", Height + 0.2, Room("loft", 0, 0, 4, 3)));
    }
}
