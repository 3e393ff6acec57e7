using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Tests.Propagation;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>
/// Houses as people live in them: one to three levels, each a grid of rooms that knows its rooms, with doors, gaps and half
/// walls between them, windows and doors to the outside, stair voids, racks and wardrobes, and spots and seats indoors.
/// </summary>
internal static class RoomedHouse
{
    private static readonly Gen<double[]> Cuts = RandomPlace.Metres(16, 45).Array[1, 3].Select(steps =>
    {
        var cuts = new List<double> { 0 };
        foreach (double step in steps)
        {
            cuts.Add(cuts[^1] + step);
        }

        return cuts.ToArray();
    });

    private static readonly Gen<Level> AnyLevel =
        from decimetres in Gen.Int[22, 28]
        let height = decimetres / 10.0
        from xs in Cuts
        from ys in Cuts
        let sides = RoomGrid.Sides(xs, ys)
        from dresses in RoomSide.Any.Array[sides.Length]
        let rooms = RoomGrid.Rooms(xs, ys)
        from buildUp in RoomMaterials.OfAFloor
        from voidRoom in Gen.Int[0, 2 * rooms.Length]
        from shares in Gen.Double[0.05, 0.45].Array[4]
        select new Level("level", 0, height)
        {
            Rooms = rooms,
            Walls = [.. sides.Zip(dresses, (side, dress) => (side, dress))
                .Select((w, i) => w.dress.On($"wall {i}", w.side, height))
                .OfType<Wall>()],
            Above = new FloorAbove(
                buildUp,
                buildUp.Layers.Any(layer => layer.Joists is not null) ? new JoistLayout(0, 0.4, null) : null,
                voidRoom < rooms.Length ? [Within(rooms[voidRoom].Outline, shares)] : []),
        };

    /// <summary>A house.</summary>
    internal static readonly Gen<House> Any =
        from levels in AnyLevel.Array[1, 3]
        let stacked = Stacked(levels)
        from fixtures in RoomFixture.In(stacked).Array[0, 4]
        let standing = Apart(fixtures)
        from spots in Place(stacked, standing).Array[1, 2]
        from seats in Place(stacked, standing).Array[2, 4]
        from facings in Gen.OneOf(Gen.Const((double?)null), Gen.Double[-180, 180].Select(d => (double?)d)).Array[seats.Length]
        select new House(
            "house",
            stacked,
            standing,
            [.. spots.Select((p, i) => new Spot($"spot {i}", p.Level, p.Plan, p.Height))],
            [.. seats.Select((p, i) => new Seat($"seat {i}", p.Level, p.Plan, p.Height, facings[i], 15))],
            SimpleHouse.Radio,
            SimpleHouse.Radio)
        {
            Surroundings = SubstanceTable.Surroundings,
        };

    /// <summary>Somewhere in a room of a level.</summary>
    internal static Gen<Point2> InARoom(Level level) =>
        from room in Gen.Int[0, level.Rooms.Count - 1]
        from x in Gen.Double[0.05, 0.95]
        from y in Gen.Double[0.05, 0.95]
        let least = level.Rooms[room].Outline.Least
        let size = level.Rooms[room].Outline.Greatest - least
        select new Point2(least.X + (x * size.X), least.Y + (y * size.Y));

    private static Gen<(int Level, Point2 Plan, double Height)> Place(Level[] levels, Fixture[] fixtures) =>
        from level in Gen.Int[0, levels.Length - 1]
        from plan in InARoom(levels[level])
        from height in RandomPlace.Metres(2, 18)
        from fixture in Gen.Int[0, 8]
        select fixture < fixtures.Length && fixtures[fixture].IsShell
            ? (fixtures[fixture].LevelIndex, fixtures[fixture].Centre, (fixtures[fixture].FromMetres + fixtures[fixture].ToMetres) / 2)
            : (level, plan, height);

    // Two things never stand in one place.
    private static Fixture[] Apart(Fixture[] fixtures)
    {
        var standing = new List<Fixture>();
        foreach (Fixture fixture in fixtures)
        {
            if (standing.All(other => other.LevelIndex != fixture.LevelIndex
                || other.Centre.DistanceTo(fixture.Centre) > Reach(other) + Reach(fixture)))
            {
                standing.Add(fixture);
            }
        }

        return [.. standing];

        static double Reach(Fixture fixture) => double.Hypot(fixture.SizeX, fixture.SizeY) / 2;
    }

    private static Polygon Within(Polygon room, double[] shares)
    {
        Point2 least = room.Least, greatest = room.Greatest, size = greatest - least;
        double left = least.X + (shares[0] * size.X), right = greatest.X - (shares[1] * size.X);
        double bottom = least.Y + (shares[2] * size.Y), top = greatest.Y - (shares[3] * size.Y);
        return new Polygon([new(left, bottom), new(right, bottom), new(right, top), new(left, top)]);
    }

    private static Level[] Stacked(Level[] levels)
    {
        var stacked = new Level[levels.Length];
        double elevation = 0;
        for (int i = 0; i < levels.Length; i++)
        {
            FloorAbove? above = i + 1 < levels.Length ? levels[i].Above : null;
            stacked[i] = levels[i] with { Name = $"level {i}", ElevationMetres = elevation, Above = above };
            elevation += levels[i].HeightMetres + (above?.BuildUp.ThicknessMetres ?? 0);
        }

        return stacked;
    }
}
