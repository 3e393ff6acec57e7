using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>Things that stand in rooms: steel racks open in front, wardrobes, screens, water.</summary>
internal static class RoomFixture
{
    /// <summary>Something in a room of one of some levels, clear of its walls.</summary>
    internal static Gen<Fixture> In(Level[] levels) =>
        from level in Gen.Int[0, levels.Length - 1]
        from room in Gen.Int[0, levels[level].Rooms.Count - 1]
        from x in Gen.Double[0, 1]
        from y in Gen.Double[0, 1]
        from sizeX in RandomPlace.Metres(1, 9)
        from sizeY in RandomPlace.Metres(1, 9)
        from turn in Gen.OneOf(Gen.OneOf(0.0, 90, 180), Gen.Double[-180, 180])
        from bottom in Gen.OneOf(Gen.Const(0.0), RandomPlace.Metres(1, 8))
        from height in RandomPlace.Metres(2, 13)
        from material in RoomMaterials.OfAFixture
        from shell in Gen.Bool
        from open in Gen.OneOf(BoxSides.West, BoxSides.North, BoxSides.East | BoxSides.Top, BoxSides.None)
        select new Fixture(
            $"fixture {level} {room}",
            level,
            In(levels[level].Rooms[room].Outline, x, y, double.Hypot(sizeX, sizeY) / 2),
            sizeX,
            sizeY,
            turn,
            bottom,
            bottom + height,
            material)
        {
            IsShell = shell,
            OpenSides = shell ? open : BoxSides.None,
        };

    private static Point2 In(Polygon room, double x, double y, double clearMetres)
    {
        Point2 least = room.Least, size = room.Greatest - least;
        return new Point2(Within(least.X, size.X, x), Within(least.Y, size.Y, y));

        double Within(double from, double length, double share)
        {
            double clear = Math.Min(clearMetres + 0.02, length / 2);
            return from + clear + (share * (length - (2 * clear)));
        }
    }
}
