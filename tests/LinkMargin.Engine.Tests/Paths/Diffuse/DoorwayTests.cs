using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Paths.Diffuse;

/// <summary>Nobody who walks through an open door or up a stair void sees a seam in the diffuse field.</summary>
public sealed class DoorwayTests
{
    private const double SeamDb = 0.2;

    // The seam itself is held to the figure above. A step of 1 cm beside it may follow the field's own slope, which near a jamb
    // comes to 0.2 dB and a little: a third of what any seat's level may move in 1 cm.
    private const double StepDb = 0.5;
    private const double StepMetres = 0.01;

    [Fact, Law]
    public void The_density_is_the_same_on_both_sides_of_an_open_doorway() =>
        Gen.Select(TwoRooms, Gen.Double[0.1, 0.7], Gen.Double[0.3, 1.7]).ForAll(
            (house, across, height) =>
            {
                DiffuseField field = new DiffuseHouse(house).Of(house.Spots[0]);
                Point3 From(double x) => new(x, 1.2 + across, height);
                double here = field.At(From(4 - 1e-6)), there = field.At(From(4 + 1e-6));
                Assert.Equal(Db(here), Db(there), SeamDb);
                Assert.All(Steps(From(3), From(5)), step => AreNear(field, step.From, step.To));
            },
            cases: 30);

    [Fact, Law]
    public void The_density_is_the_same_over_and_under_a_stair_void() =>
        Gen.Select(TwoLevels, Gen.Double[0.2, 0.8], Gen.Double[0.2, 0.8]).ForAll(
            (house, x, y) =>
            {
                DiffuseField field = new DiffuseHouse(house).Of(house.Spots[0]);
                Point3 From(double z) => new(1 + x, 1 + (2 * y), z);
                double middle = (house.Levels[0].CeilingMetres + house.Levels[1].ElevationMetres) / 2;
                Assert.Equal(Db(field.At(From(middle - 1e-6))), Db(field.At(From(middle + 1e-6))), SeamDb);
                Assert.All(Steps(From(1), From(4)), step => AreNear(field, step.From, step.To));
            },
            cases: 30);

    // Two rooms of 4 m by 3 m and 3 m by 3 m, one door of 0.8 m in the wall between.
    private static Gen<House> TwoRooms { get; } =
        from walls in RoomMaterials.OfAWall.Array[7]
        from spot in Gen.Double[0.5, 6.5]
        select TwoRoomsOf(walls, spot);

    private static Gen<House> TwoLevels { get; } =
        from walls in RoomMaterials.OfAWall.Array[8]
        from floor in RoomMaterials.OfAFloor
        from spot in Gen.Int[0, 1]
        select TwoLevelsOf(walls, floor, spot);

    private static House TwoRoomsOf(Material[] materials, double spot)
    {
        RoomGrid.Side[] sides = RoomGrid.Sides([0, 4, 7], [0, 3]);
        Wall[] walls = [.. sides.Select((side, i) => new Wall($"wall {i}", side.Start, side.End, 0, 2.4, materials[i])
        {
            Openings = side.IsOuter ? [] : [new Opening("door", OpeningKind.Door, 1.2, 0.8, 0, 2, null, true)],
        })];
        return SimpleHouse.Of(new Level("level", 0, 2.4) { Rooms = RoomGrid.Rooms([0, 4, 7], [0, 3]), Walls = walls }) with
        {
            Spots = [new Spot("spot", 0, new Point2(spot, 0.7), 1)],
        };
    }

    private static House TwoLevelsOf(Material[] materials, FloorBuildUp floor, int spotLevel)
    {
        RoomGrid.Side[] sides = RoomGrid.Sides([0, 4], [0, 5]);
        Level Of(string name, double elevation, int first) => new(name, elevation, 2.4)
        {
            Rooms = RoomGrid.Rooms([0, 4], [0, 5]),
            Walls = [.. sides.Select((side, i) => new Wall($"{name} {i}", side.Start, side.End, 0, 2.4, materials[first + i]))],
        };
        Level lower = Of("lower", 0, 0) with
        {
            Above = new FloorAbove(floor, null, [new Polygon([new(1, 1), new(2, 1), new(2, 3), new(1, 3)])]),
        };
        return SimpleHouse.Of(lower, Of("upper", 2.4 + floor.ThicknessMetres, 4)) with
        {
            Spots = [new Spot("spot", spotLevel, new Point2(3, 4), 1)],
        };
    }

    private static IEnumerable<(Point3 From, Point3 To)> Steps(Point3 from, Point3 to)
    {
        int count = (int)(from.DistanceTo(to) / StepMetres);
        return Enumerable.Range(0, count)
            .Select(i => (from.Towards(to, (double)i / count), from.Towards(to, (i + 1.0) / count)));
    }

    private static void AreNear(DiffuseField field, Point3 from, Point3 to) =>
        Assert.Equal(Db(field.At(from)), Db(field.At(to)), StepDb);

    private static double Db(double density) => Decibels.FromPowerRatio(density);
}
