using CsCheck;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>What one side of a room is like, whatever its length.</summary>
internal sealed record RoomSide(int Manner, Material Inner, Material Outer, Material Leaf, double Place, double Width, double Part)
{
    internal static readonly Gen<RoomSide> Any =
        from manner in Gen.Int[0, 7]
        from inner in RoomMaterials.OfAWall
        from outer in RoomMaterials.OfAWall
        from leaf in RoomMaterials.OfALeaf
        from place in Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 1])
        from width in Gen.OneOf(Gen.OneOf(0.7, 0.8, 0.9), Gen.Double[0.6, 1.4])
        from part in Gen.Double[0.35, 0.8]
        select new RoomSide(manner, inner, outer, leaf, place, width, part);

    internal Wall On(string name, RoomGrid.Side side, double heightMetres)
    {
        var wall = new Wall(name, side.Start, side.End, 0, heightMetres, side.IsOuter ? Outer : Inner);
        return (side.IsOuter, Manner) switch
        {
            (true, < 4) => wall with { Openings = [Opening(wall, OpeningKind.Window, 0.9, 1.2, false)] },
            (true, 4) => wall with { Openings = [Opening(wall, OpeningKind.Door, 0, 2, false)] },
            (true, 5) => wall with { Openings = [Opening(wall, OpeningKind.Door, 0, 2, true)] },
            (false, < 3) => wall with { Openings = [Opening(wall, OpeningKind.Door, 0, 2, true)] },
            (false, 3) => wall with { Openings = [Opening(wall, OpeningKind.Door, 0, 2, false)] },
            (false, 4) => wall with { Openings = [Opening(wall, OpeningKind.Gap, 0, heightMetres, true)] },
            (false, 5) => wall with { TopMetres = Math.Round(Part * heightMetres, 1) },
            _ => wall,
        };
    }

    private Opening Opening(Wall wall, OpeningKind kind, double sill, double height, bool isOpen)
    {
        double width = Math.Min(Width, wall.LengthMetres - 0.2);
        double offset = Place * (wall.LengthMetres - width);
        return new Opening(
            $"{wall.Name} {kind}", kind, offset, width, sill, height, kind == OpeningKind.Gap ? null : Leaf, isOpen);
    }
}
