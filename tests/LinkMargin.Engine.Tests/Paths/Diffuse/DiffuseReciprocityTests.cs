using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Paths.Diffuse;

/// <summary>Two places hear each other alike by the diffuse field, whatever stands about them.</summary>
public sealed class DiffuseReciprocityTests
{
    private const double SameDb = 1e-9;

    [Fact, Law]
    public void Any_two_places_of_a_house_hear_each_other_alike() =>
        Gen.Select(RoomedHouse.Any, Share.Array[3], Share.Array[3]).ForAll(
            (house, one, other) =>
            {
                var diffuse = new DiffuseHouse(house);
                AreAlike(diffuse, Inside(house, one), Inside(house, other));
            },
            cases: 200);

    [Fact, Law]
    public void So_do_a_place_inside_a_hollow_fixture_and_any_other() =>
        Gen.Select(RoomedHouse.Any.Where(h => h.Fixtures.Any(f => f.IsShell)), Share.Array[3]).ForAll(
            (house, other) =>
            {
                Fixture box = house.Fixtures.First(f => f.IsShell);
                double floor = house.Levels[box.LevelIndex].ElevationMetres;
                Point3 inside = box.Centre.At(floor + ((box.FromMetres + box.ToMetres) / 2));
                AreAlike(new DiffuseHouse(house), inside, Inside(house, other));
            },
            cases: 100);

    [Fact]
    public void So_do_two_rooms_of_which_one_rings_and_the_other_swallows_all()
    {
        // Walls that hardly reflect about one room, walls that hardly lose about the other.
        House house = TwoRooms(null);
        AreAlike(new DiffuseHouse(house), new Point3(1.5, 2.5, 1), new Point3(6.3, 3, 1.1));
        House open = TwoRooms(new Opening("door", OpeningKind.Door, 1.2, 0.9, 0, 2, null, true));
        AreAlike(new DiffuseHouse(open), new Point3(1.5, 2.5, 1), new Point3(6.3, 3, 1.1));
        AreAlike(new DiffuseHouse(open), new Point3(3.99, 1.6, 1), new Point3(4.4, 1.7, 1.1));
    }

    private static Gen<double> Share => Gen.Double[0.01, 0.99];

    private static House TwoRooms(Opening? door)
    {
        Material light = new("light", 0.5, 0, "made up"), heavy = new("heavy", 40, 0, "made up");
        RoomGrid.Side[] sides = RoomGrid.Sides([0, 4, 8], [0, 4]);
        Wall[] walls = [.. sides.Select((side, i) => new Wall(
            $"wall {i}", side.Start, side.End, 0, 2.4, Math.Max(side.Start.X, side.End.X) <= 4 && side.IsOuter ? light : heavy)
        {
            Openings = side.IsOuter || door is null ? [] : [door],
        })];
        return SimpleHouse.Of(new Level("level", 0, 2.4) { Rooms = RoomGrid.Rooms([0, 4, 8], [0, 4]), Walls = walls });
    }

    private static Point3 Inside(House house, double[] shares)
    {
        Level level = house.Levels[(int)(shares[0] * house.Levels.Count)];
        Room room = level.Rooms[(int)(shares[1] * level.Rooms.Count)];
        Point2 size = room.Outline.Greatest - room.Outline.Least;
        double again = (shares[1] * level.Rooms.Count) % 1;
        return (room.Outline.Least + new Point2(again * size.X, shares[2] * size.Y))
            .At(level.ElevationMetres + (((shares[0] * house.Levels.Count) % 1) * level.HeightMetres));
    }

    private static void AreAlike(DiffuseHouse house, Point3 one, Point3 other)
    {
        double there = house.Of(one).At(other), back = house.Of(other).At(one);
        Assert.True(there > 0);
        Assert.Equal(Decibels.FromPowerRatio(there), Decibels.FromPowerRatio(back), SameDb);
    }
}
