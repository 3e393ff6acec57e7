using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Benchmarks;

/// <summary>Houses made up for timing: grids of rooms with a door in every inner wall. Their figures mean nothing.</summary>
internal static class SyntheticHouse
{
    private const double HeightMetres = 2.4;
    private const double FloorMetres = 0.3;
    private const double RoomMetres = 3;

    private static readonly Material Stud = Sheet("stud", 3);
    private static readonly Material Block = Sheet("block", 8);
    private static readonly Material Door = Sheet("door", 2.5);
    private static readonly Material Board = Sheet("board", 2);
    private static readonly Material Steel = Sheet("steel", 25);
    private static readonly Material Timber = Sheet("timber", 7);

    private static readonly Radio Radio = new(
        "radio", PowerLevel.FromDbm(4), -2, PowerLevel.FromDbm(-90), 3, 0, "made up for timing");

    /// <summary>
    /// Three storeys of 12 m by 9 m, 93 walls, joisted floors with a stair void, a steel rack and a solid stack; the spot in
    /// the rack on the lowest.
    /// </summary>
    internal static House ThreeStoreys()
    {
        const int Across = 4, Deep = 3;
        Level[] levels = [.. Enumerable.Range(0, 3).Select(i => LevelOf(i, Across, Deep) with { Above = i < 2 ? Floor() : null })];
        Fixture rack = new("rack", 0, new Point2(1, 8), 0.7, 0.9, 0, 0, 1.9, Steel) { IsShell = true, OpenSides = BoxSides.East };
        Fixture stack = new("stack", 1, new Point2(6, 4.4), 1.2, 0.6, 0, 0, HeightMetres, Block);
        return new House(
            "three storeys",
            levels,
            [rack, stack],
            [new Spot("rack", 0, new Point2(1, 8), 1.1)],
            [new Seat("sofa", 1, new Point2(8, 2), 0.7, 90, 15)],
            Radio,
            Radio);
    }

    /// <summary>
    /// One storey of square rooms with as near to so many walls as a square grid allows, never fewer. The spot stands at the same place of a room in
    /// the middle, whatever their number.
    /// </summary>
    internal static House OneStorey(int walls)
    {
        int side = 1;
        while (2 * side * (side + 1) < walls)
        {
            side++;
        }

        double middle = (side / 2 * RoomMetres) + 1.5;
        return new House(
            $"{walls} walls",
            [LevelOf(0, side, side)],
            [],
            [new Spot("spot", 0, new Point2(middle - 1, middle - 1), 1.1)],
            [new Seat("seat", 0, new Point2(middle + 1, middle + 1), 0.7, null, 15)],
            Radio,
            Radio);
    }

    /// <summary>Two storeys of square rooms, as many to a side, with a joisted floor between: the spot up in one corner, the seat down in the other.</summary>
    internal static House TwoStoreys(int side)
    {
        double far = (side * RoomMetres) - 1;
        return new House(
            $"two storeys of {side * side} rooms",
            [LevelOf(0, side, side) with { Above = Floor() }, LevelOf(1, side, side)],
            [],
            [new Spot("spot", 1, new Point2(1, 1), 1.1)],
            [new Seat("seat", 0, new Point2(far, far), 0.7, null, 15)],
            Radio,
            Radio);
    }

    private static Level LevelOf(int index, int across, int deep)
    {
        var walls = new List<Wall>();
        var rooms = new List<Room>();
        for (int i = 0; i <= across; i++)
        {
            for (int j = 0; j <= deep; j++)
            {
                if (j < deep)
                {
                    walls.Add(WallOf(At(i, j), At(i, j + 1), i == 0 || i == across));
                }

                if (i < across)
                {
                    walls.Add(WallOf(At(i, j), At(i + 1, j), j == 0 || j == deep));
                }

                if (i < across && j < deep)
                {
                    rooms.Add(new Room($"room {i} {j}", new Polygon([At(i, j), At(i + 1, j), At(i + 1, j + 1), At(i, j + 1)])));
                }
            }
        }

        return new Level($"level {index}", index * (HeightMetres + FloorMetres), HeightMetres) { Rooms = rooms, Walls = walls };

        static Point2 At(int i, int j) => new(i * RoomMetres, j * RoomMetres);
    }

    private static Wall WallOf(Point2 start, Point2 end, bool outer) => new(
        $"{start} {end}", start, end, 0, HeightMetres, outer ? Block : Stud)
    {
        Openings = outer ? [] : [new Opening($"door {start} {end}", OpeningKind.Door, 1, 0.8, 0, 2, Door, false)],
    };

    private static FloorAbove Floor() => new(
        new FloorBuildUp(
            "joisted",
            [new(Board, 0.02, null), new(null, FloorMetres - 0.03, new Ribs(Timber, 0.05, 0.22, 0.4)), new(Board, 0.01, null)],
            "made up for timing"),
        new JoistLayout(0, 0.4, 0.1),
        [new Polygon([new(9.2, 6.2), new(11, 6.2), new(11, 8.8), new(9.2, 8.8)])]);

    private static Material Sheet(string name, double lossDb) => new(name, lossDb, 1, "made up for timing");
}
