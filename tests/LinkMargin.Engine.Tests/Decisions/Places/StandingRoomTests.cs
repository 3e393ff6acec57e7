using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Decisions.Places;

public sealed class StandingRoomTests
{
    private static readonly Material Steel = new("steel", 20, 1, "invented for tests");

    [Fact]
    public void On_the_floor_a_console_stands_clear_of_walls_solid_things_voids_and_keep_outs()
    {
        House house = House;
        IReadOnlyList<Standing> places = StandingRoom.Of(house, new PlaceRequest { CellMetres = 0.1, HeightsMetres = [0.5, 1.5, 3] });
        Assert.All(places, place => Assert.True(place.HeightMetres is 0.5 or 1.5)); // 3 m is above the ceiling
        Assert.All(places, place => Assert.InRange(place.Plan.X, 0.15, 3.85));
        Assert.DoesNotContain(places, p => p.LevelIndex == 0 && p.HeightMetres == 0.5 && p.Plan.DistanceTo(new Point2(1, 1)) < 0.4); // the chest
        Assert.Contains(places, p => p.LevelIndex == 0 && p.HeightMetres == 1.5 && p.Plan.DistanceTo(new Point2(1, 1)) < 0.4); // on top of it
        Assert.Contains(places, p => p.LevelIndex == 0 && p.HeightMetres == 0.5 && p.Plan.DistanceTo(new Point2(3, 1)) < 0.3); // in the hollow rack
        Assert.DoesNotContain(places, p => p.LevelIndex == 0 && p.Plan.X > 3 && p.Plan.Y > 3); // kept out
        Assert.DoesNotContain(places, p => p.LevelIndex == 1 && p.Plan.X < 1 && p.Plan.Y > 3); // the void in the floor
        Assert.Contains(places, p => p.LevelIndex == 0 && p.Plan.X < 1 && p.Plan.Y > 3);
        Assert.Equal("den", places[0].Where);
    }

    [Fact]
    public void Zones_bound_the_search_unless_it_is_to_go_everywhere()
    {
        House house = House with { Zones = [new Zone("shelf", 1, Square(1, 1, 1.3, 1.2), [0.4, 1.6]), new Zone("kept out", 0, Square(3.2, 3.2, 3.4, 3.4), [1])] };
        IReadOnlyList<Standing> places = StandingRoom.Of(house, new PlaceRequest());
        Assert.Equal(2 * 3 * 2, places.Count); // 0.1 m apart, two boards; the zone in the keep-out has none
        Assert.All(places, place => Assert.Equal((1, "shelf"), (place.LevelIndex, place.Where)));
        Assert.True(StandingRoom.Of(house, new PlaceRequest { Everywhere = true }).Count > 200);
        Assert.Empty(StandingRoom.Of(house, new PlaceRequest { LevelIndex = 0 }));
    }

    [Fact]
    public void A_zone_narrower_than_a_cell_still_has_a_place()
    {
        House house = House with { Zones = [new Zone("ledge", 1, Square(1, 1, 1.04, 1.02), [1])] };
        Standing only = Assert.Single(StandingRoom.Of(house, new PlaceRequest()));
        Assert.Equal(1.02, only.Plan.X, 1e-9);
        Assert.Equal(1.01, only.Plan.Y, 1e-9);

        // The middle of its box lies outside this one.
        Zone bent = new("bent", 1, new Polygon([new(1, 1), new(1.09, 1), new(1.09, 1.02), new(1.02, 1.02), new(1.02, 1.09), new(1, 1.09)]), [1]);
        Assert.NotEmpty(StandingRoom.Of(house with { Zones = [bent] }, new PlaceRequest()));
    }

    private static House House => SimpleHouse.OfWalls() with
    {
        Levels =
        [
            new Level("low", 0, 2.4)
            {
                Rooms = [new Room("den", Square(0, 0, 4, 4))],
                Above = new FloorAbove(new FloorBuildUp("floor", [new FloorLayer(Steel, 0.2, null)], "invented"), null, [Square(0.2, 3, 1, 3.8)]),
            },
            new Level("high", 2.6, 2.4) { Rooms = [new Room("loft", Square(0, 0, 4, 4))] },
        ],
        Fixtures =
        [
            new Fixture("chest", 0, new Point2(1, 1), 0.8, 0.8, 0, 0, 1, Steel),
            new Fixture("rack", 0, new Point2(3, 1), 0.6, 0.6, 0, 0, 1, Steel) { IsShell = true },
        ],
        KeepOuts = [new KeepOut("corner", 0, Square(3, 3, 4, 4), 0, 2.4)],
    };

    private static Polygon Square(double west, double south, double east, double north) =>
        new([new(west, south), new(east, south), new(east, north), new(west, north)]);
}
