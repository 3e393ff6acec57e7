using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Tests.Links;

namespace LinkMargin.Engine.Tests.Scenes;

/// <summary>The same wall may be written in several ways; a line cannot tell.</summary>
public sealed class WallWritingTests
{
    private const int Houses = 200;

    private static readonly Gen<(House House, int Level, int Wall)> HouseAndWall =
        from house in RandomHouse.Any.Where(h => h.Levels.Any(l => l.Walls.Count > 0))
        from pick in Gen.Int[0, 1000]
        let level = Enumerable.Range(0, house.Levels.Count).First(i => house.Levels[i].Walls.Count > 0)
        select (house, level, pick % house.Levels[level].Walls.Count);

    // Anywhere, at whole decimetres where other walls join, at the middle, and at jambs.
    private static readonly Gen<(House House, int Level, int Wall, double Share)> HouseAndCut =
        from drawn in HouseAndWall
        let wall = drawn.House.Levels[drawn.Level].Walls[drawn.Wall]
        from anywhere in Gen.Double[0.01, 0.99]
        from decimetres in Gen.Int[1, Math.Max(1, (int)(10 * wall.LengthMetres) - 1)]
        from which in Gen.Int[0, 2]
        let jambs = wall.Openings.SelectMany(o => new[] { o.OffsetMetres, o.OffsetMetres + o.WidthMetres })
            .Select(metres => metres / wall.LengthMetres).Where(share => share is > 0.001 and < 0.999).ToArray()
        from jamb in Gen.Int[0, 1000]
        let share = which == 0 ? anywhere
            : which == 1 || jambs.Length == 0 ? decimetres / 10.0 / wall.LengthMetres
            : jambs[jamb % jambs.Length]
        where share < 0.999
        select (drawn.House, drawn.Level, drawn.Wall, share);

    [Fact, Law]
    public void Cutting_a_wall_in_two_changes_nothing() =>
        (from cut in HouseAndCut
         let level = cut.House.Levels[cut.Level]
         let wall = level.Walls[cut.Wall]
         let pieces = WallEdits.Cut(wall, cut.Share)
         let marks = pieces.SelectMany(piece => Marks.OfWall(piece, level)).ToArray()
         from lines in RandomLine.Aimed(Gen.OneOf(marks)).Array[20]
         select (cut.House, WallEdits.Replace(cut.House, cut.Level, cut.Wall, pieces), lines))
        .ForAll(LineLoss.AreTheSame, cases: Houses);

    [Fact, Law]
    public void Drawing_a_wall_from_its_other_end_changes_nothing() =>
        (from drawn in HouseAndWall
         let level = drawn.House.Levels[drawn.Level]
         let wall = level.Walls[drawn.Wall]
         from lines in RandomLine.Aimed(Gen.OneOf(Marks.OfWall(wall, level).ToArray())).Array[20]
         select (drawn.House, WallEdits.Replace(drawn.House, drawn.Level, drawn.Wall, WallEdits.Reversed(wall)), lines))
        .ForAll(LineLoss.AreTheSame, cases: Houses);

    [Fact, Law]
    public void Listing_the_walls_the_other_way_round_changes_nothing() =>
        (from house in RandomHouse.Any
         from lines in RandomLine.In(house).Array[20]
         let listed = house with { Levels = [.. house.Levels.Select(l => l with { Walls = [.. l.Walls.Reverse()] })] }
         select (house, listed, lines))
        .ForAll(LineLoss.AreTheSame, cases: Houses);

    [Fact]
    public void Cutting_keeps_length_and_openings()
    {
        Material stud = new("stud", 3, 1, "invented for tests");
        Wall wall = new("w", new Point2(0, 0), new Point2(4, 0), 0, 2.4, stud)
        {
            Openings = [new Opening("door", OpeningKind.Door, 1, 2, 0, 2, stud, false)],
        };
        Wall[] pieces = WallEdits.Cut(wall, 0.5);
        Assert.Equal([2, 2], pieces.Select(p => p.LengthMetres));
        Assert.Equal([(1, 1), (0, 1)], pieces.Select(p => (p.Openings[0].OffsetMetres, p.Openings[0].WidthMetres)));
        Assert.Equal(1, WallEdits.Reversed(wall).Openings[0].OffsetMetres);
    }
}
