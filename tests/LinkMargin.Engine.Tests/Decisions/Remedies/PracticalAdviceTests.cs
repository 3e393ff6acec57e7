using CsCheck;
using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Decisions.Remedies;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Decisions.Remedies;

/// <summary>What is advised can be done: a receiver stays where it is put, an open side lets air in, a shelf has a floor under it.</summary>
public sealed class PracticalAdviceTests
{
    private static readonly Material Brick = SimpleHouse.Material("brick", 6) with { ThicknessMetres = 0.2 };
    private static readonly Material Steel = SimpleHouse.Material("steel", 30) with { ThicknessMetres = 0.001 };
    private static readonly Material Mesh = SimpleHouse.Material("mesh", 3) with { ThicknessMetres = 0.001 };

    [Fact, Law]
    public void A_receiver_is_stuck_to_a_wall_or_lies_on_a_fixture() => RoomedHouse.Any.ForAll(
        house =>
        {
            foreach ((Room room, int level) in house.Levels.SelectMany((level, i) => level.Rooms.Select(room => (room, i))))
            {
                foreach (ReceiverRest rest in ReceiverRests.In(house, level, room))
                {
                    Assert.True(room.Outline.Contains(rest.Place.Plan));
                    Assert.InRange(rest.Place.HeightMetres, ReceiverRests.LowestMetres, ReceiverRests.HighestMetres + ImproveRequest.GreatestFromFaceMetres);
                    Assert.DoesNotContain(house.Fixtures, f => f.LevelIndex == level && f.Contains(rest.Place.Plan, rest.Place.HeightMetres));
                    if (rest.On.Length > 0)
                    {
                        Assert.Contains(house.Fixtures, under => under.Name == rest.On
                            && under.LevelIndex == level
                            && under.Contains(rest.Place.Plan, under.ToMetres, 0.006) // given to a centimetre
                            && rest.Place.HeightMetres - under.ToMetres is >= 0 and <= ImproveRequest.GreatestFromFaceMetres);
                    }
                    else
                    {
                        double fromLine = house.Levels[level].Walls.Min(wall => DistanceToLine(wall, rest.Place.Plan) - ((wall.Material.ThicknessMetres ?? 0.1) / 2));
                        Assert.InRange(fromLine, 0, ImproveRequest.GreatestFromFaceMetres);
                    }
                }
            }
        },
        cases: 60);

    [Fact]
    public void No_receiver_is_stuck_to_a_doorway_a_window_or_the_air_over_a_low_wall()
    {
        Wall south = new("south", new(0, 0), new(6, 0), 0, 2.4, Brick)
        {
            Openings = [new Opening("window", OpeningKind.Window, 2, 2, 0.8, 1.2, Brick, false)],
        };
        Wall north = new("low wall", new(0, 5), new(6, 5), 0, 1, Brick);
        House house = Hall([south, north]);
        Point2[] At(double height) => [.. ReceiverRests.In(house, 0, house.Levels[0].Rooms[0]).Where(r => r.Place.HeightMetres == height).Select(r => r.Place.Plan)];

        Assert.Contains(At(0.2), p => p.Y < 1 && p.X is > 2 and < 4); // under the window
        Assert.DoesNotContain(At(0.9), p => p.Y < 1 && p.X is > 1.9 and < 4.1); // in it
        Assert.Contains(At(0.9), p => p.Y < 1 && p.X < 1.9);
        Assert.Contains(At(0.9), p => p.Y > 4);
        Assert.DoesNotContain(At(1.5), p => p.Y > 4); // over the low wall
        Assert.All(At(1.5), p => Assert.Equal(0.15, p.Y, 1e-9)); // half of 0.2 m, and 0.05 m off its face
        Assert.DoesNotContain(At(0.2).Concat(At(0.9)), p => p.X is < 0.1 or > 5.9); // no wall stands there
    }

    [Theory]
    [InlineData(0.19, false)]
    [InlineData(0.21, true)]
    [InlineData(2.09, true)]
    [InlineData(2.11, false)]
    public void A_receiver_lies_on_tops_that_people_reach(double topMetres, bool isRest)
    {
        House house = Hall([]) with { Fixtures = [new Fixture("chest", 0, new(3, 2.5), 0.8, 0.5, 30, 0, topMetres, Brick)] };
        Assert.Equal(isRest, ReceiverRests.In(house, 0, house.Levels[0].Rooms[0]).Any(rest => rest.On == "chest"));
    }

    [Theory]
    [InlineData(BoxSides.West)]
    [InlineData(BoxSides.East)]
    [InlineData(BoxSides.South)]
    [InlineData(BoxSides.North)]
    [InlineData(BoxSides.Top)]
    public void A_side_needs_air_before_it(BoxSides side)
    {
        foreach (double turn in new[] { 0.0, 30 })
        {
            foreach ((double gap, bool isFree) in new[] { (ImproveRequest.LeastFreeAirMetres - 0.001, false), (ImproveRequest.LeastFreeAirMetres + 0.001, true) })
            {
                var rack = new Fixture("rack", 0, new(3, 2.5), 0.6, 0.8, turn, 0, 1, Steel) { IsShell = true };
                Fixture before = side == BoxSides.Top
                    ? rack with { Name = "other", FromMetres = 1 + gap, ToMetres = 2, IsShell = false }
                    : rack with { Name = "other", Centre = Beyond(rack, side, gap), IsShell = false };
                House house = Hall([]) with { Fixtures = [rack, before] };
                Assert.Equal(isFree, FreeAir.IsBefore(house, rack, side));
                Assert.All(
                    new[] { BoxSides.West, BoxSides.East, BoxSides.South, BoxSides.North, BoxSides.Top }.Except([side]),
                    other => Assert.True(FreeAir.IsBefore(house, rack, other)));
            }
        }
    }

    [Theory]
    [InlineData(0.099, false)]
    [InlineData(0.101, true)]
    public void A_wall_or_a_ceiling_before_a_side_counts_by_its_face(double gap, bool isFree)
    {
        var rack = new Fixture("rack", 0, new(3, 2.5), 0.6, 0.8, 0, 0, 2.4 - gap, Steel) { IsShell = true };
        double line = 3 - 0.3 - gap - (Brick.ThicknessMetres!.Value / 2);
        House house = Hall([new Wall("behind", new(line, 0), new(line, 5), 0, 2.4, Brick)]) with { Fixtures = [rack] };
        Assert.Equal((isFree, isFree), (FreeAir.IsBefore(house, rack, BoxSides.West), FreeAir.IsBefore(house, rack, BoxSides.Top)));
        Assert.True(FreeAir.IsBefore(house, rack, BoxSides.East));
    }

    [Fact]
    public void A_side_against_a_wall_is_not_advised_and_the_others_are_one_line()
    {
        // In a corner: only the east and north sides and the top have air; the seat lies between east and north.
        House house = Hall([new Wall("west", new(0, 0), new(0, 5), 0, 2.4, Brick), new Wall("south", new(0, 0), new(6, 0), 0, 2.4, Brick)]) with
        {
            Fixtures = [new Fixture("rack", 0, new(0.45, 0.45), 0.6, 0.6, 0, 0, 1, Steel) { IsShell = true }],
            Spots = [new Spot("in rack", 0, new(0.45, 0.45), 0.5)],
            Seats = [new Seat("seat", 0, new(5, 4), 0.7, null, 90)],
        };
        ImproveResult result = new ImproveSearch(house, new LinkModel(house), new ImproveRequest(house.Spots[0], [Mesh], [])).Run();
        foreach (RemedyKind kind in new[] { RemedyKind.OpenSide, RemedyKind.SwapSide })
        {
            RemedyResult line = Assert.Single(result.Alone, r => r.Remedies[0].Kind == kind);
            Assert.NotEmpty(line.Alternatives);
            Assert.All(line.Alternatives.Prepend(line), r => Assert.Equal(BoxSides.None, r.Remedies[0].Side & (BoxSides.West | BoxSides.South)));
            Assert.All(line.Alternatives, r => Assert.True(Math.Round(r.GainDb, 1) <= Math.Round(line.GainDb, 1)));
            Assert.Equal(line.Alternatives.Select(r => Math.Round(r.GainDb, 1)).OrderDescending(), line.Alternatives.Select(r => Math.Round(r.GainDb, 1)));
        }
    }

    [Fact]
    public void The_shortest_lead_that_is_enough_stands_for_all()
    {
        House house = Hall([new Wall("south", new(0, 0), new(6, 0), 0, 2.4, Brick)]) with
        {
            Spots = [new Spot("shelf", 0, new(0.5, 0.5), 0.9)],
            Seats = [new Seat("seat", 0, new(5.5, 0.5), 0.7, null, 0)],
        };
        RemedyResult Leads(double requiredDb)
        {
            House asking = house with { Seats = [house.Seats[0] with { RequiredDb = requiredDb }] };
            return Assert.Single(
                new ImproveSearch(asking, new LinkModel(asking, ModelDepth.Direct), new ImproveRequest(asking.Spots[0], [], [])).Run().Alone,
                r => r.Remedies[0].Kind == RemedyKind.Lead);
        }

        double nowDb = Leads(200).After.WeakestHeadroomDb + 200 - Leads(200).GainDb;
        Assert.Equal(5, Leads(200).Remedies[0].LengthMetres); // none is enough: the one that gains most
        Assert.Equal(2, Leads(nowDb + 2).Remedies[0].LengthMetres);
        Assert.Equal([5.0, 3, 1], Leads(nowDb + 2).Alternatives.Select(r => r.Remedies[0].LengthMetres!.Value));
    }

    [Fact]
    public void Nothing_is_put_over_a_void_in_the_floor()
    {
        Polygon hole = Square(1, 1, 3, 3);
        Level low = new Level("low", 0, 2.4)
        {
            Rooms = [new Room("hall", Square(0, 0, 6, 5))],
            Above = new FloorAbove(new FloorBuildUp("floor", [new FloorLayer(Brick, 0.2, null)], "invented"), null, [hole]),
        };
        Level high = new("high", 2.6, 2.4) { Rooms = [new Room("landing", Square(0, 0, 6, 5))] };
        House house = Hall([]) with
        {
            Levels = [low, high],
            Zones = [new Zone("over the stair", 1, Square(1.2, 1.2, 2, 2), [1]), new Zone("across its edge", 1, Square(2.8, 1, 3.4, 1.2), [1])],
            Fixtures = [new Fixture("bridge", 1, new(2, 2), 2.5, 0.5, 0, 0, 1, Brick)],
            Spots = [new Spot("shelf", 1, new(5, 4), 1)],
            Seats = [new Seat("seat", 1, new(3.3, 2), 0.7, null, 90)],
        };
        Assert.All(StandingRoom.Of(house, new PlaceRequest()), place => Assert.False(hole.Contains(place.Plan)));
        Assert.NotEmpty(StandingRoom.Of(house, new PlaceRequest()));
        Assert.NotEmpty(StandingRoom.Of(house with { Zones = [house.Zones[0] with { LevelIndex = 0 }] }, new PlaceRequest())); // under it there is a floor
        Assert.All(ReceiverRests.In(house, 1, high.Rooms[0]), rest => Assert.False(hole.Contains(rest.Place.Plan)));
        ImproveResult result = new ImproveSearch(house, new LinkModel(house, ModelDepth.Direct), new ImproveRequest(house.Spots[0], [], [])).Run();
        Assert.All(
            result.Alone.SelectMany(one => one.Alternatives.Prepend(one)).SelectMany(one => one.Remedies[0].Edits).OfType<MoveSpot>(),
            move => Assert.False(hole.Contains(move.Plan)));
        Assert.All(result.Alone.SelectMany(one => one.Remedies[0].Edits).OfType<MoveSeat>(), move => Assert.False(hole.Contains(move.Plan)));
        Assert.DoesNotContain(result.Alone, one => one.Remedies[0].Thing == "over the stair");
    }

    private static Point2 Beyond(Fixture rack, BoxSides side, double gap)
    {
        (double x, double y) = side switch
        {
            BoxSides.West => (-rack.SizeX - gap, 0.0),
            BoxSides.East => (rack.SizeX + gap, 0),
            BoxSides.South => (0, -rack.SizeY - gap),
            _ => (0, rack.SizeY + gap),
        };
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(rack.TurnDegrees));
        return rack.Centre + new Point2((cos * x) - (sin * y), (sin * x) + (cos * y));
    }

    private static double DistanceToLine(Wall wall, Point2 place)
    {
        Point2 along = wall.End - wall.Start;
        double share = Math.Clamp(Point2.Dot(place - wall.Start, along) / Point2.Dot(along, along), 0, 1);
        return place.DistanceTo(wall.Start + (share * along));
    }

    private static House Hall(Wall[] walls) => SimpleHouse.OfWalls() with
    {
        Levels = [new Level("hall", 0, 2.4) { Rooms = [new Room("hall", Square(0, 0, 6, 5))], Walls = walls }],
    };

    private static Polygon Square(double west, double south, double east, double north) =>
        new([new(west, south), new(east, south), new(east, north), new(west, north)]);
}
