using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using NetTopologySuite.Geometries;
using NtsPolygon = NetTopologySuite.Geometries.Polygon;

namespace LinkMargin.Files.Tests.Plans;

/// <summary>Plans as people write them, and plans nobody should write: the layout stays sound whatever comes.</summary>
public sealed class CarelessPlansTests
{
    private static readonly GeometryFactory Factory = new();

    /// <summary>Rooms of a grid, each corner drawn in towards the room by its own amount: clear sizes, badly measured.</summary>
    private static Gen<RoomDraft[]> BadlyMeasured { get; } =
        from rooms in RandomRooms.Any
        from most in Gen.Int[0, 200]
        from millimetres in Gen.Int[0, most].Array[8 * rooms.Cells.Length]
        select rooms.Drafts(p => p).Select((r, i) => r with { Outline = DrawnIn(r.Outline, millimetres[(8 * i)..(8 * (i + 1))]) })
            .ToArray();

    private static Gen<Point2> Anywhere { get; } =
        Gen.Select(Gen.Int[0, 60], Gen.Int[0, 60], (x, y) => new Point2(x / 10.0, y / 10.0));

    private static Gen<PlanDraft> Nonsense { get; } =
        from rooms in Anywhere.Array[0, 7].Array[0, 6]
        from walls in Anywhere.Array[0, 5].Array[0, 6]
        from heights in Gen.Int[0, 5].Array[6]
        from places in Gen.Select(Gen.Int[0, 8], Gen.Int[0, 8], Gen.Int[0, 3]).Array[0, 6]
        from ats in Gen.Double[-1, 6].Array[6]
        select new PlanDraft(
            "den",
            PlanSketch.Height,
            PlanSketch.Outer,
            PlanSketch.Inner,
            [.. rooms.Select((c, i) => new RoomDraft($"r{i}", c, new Mark(i + 1, 1)))],
            [.. walls.Select((c, i) => new WallDraft(
                i % 2 == 0 ? $"w{i}" : null, c, PlanSketch.Brick, 0, heights[i] == 0 ? null : heights[i] * 0.5, new Mark(i + 9, 1)))],
            [.. places.Select((p, i) => new OpeningDraft(
                null, OpeningKind.Door, PlaceOf(p), i % 2 == 0 ? null : ats[i], 0.5, 0, 2, null, false, new Mark(i + 19, 1)))]);

    [Fact, Law]
    public void Every_line_between_two_rooms_meets_a_wall() =>
        Gen.Select(BadlyMeasured, Gen.Double[0, 1].Array[40]).ForAll(
            (rooms, shares) =>
            {
                Plan plan = Lay(rooms);
                Geometry walls = Factory.BuildGeometry(
                    [.. plan.Walls.Select(w => Factory.CreateLineString([new(w.Start.X, w.Start.Y), new(w.End.X, w.End.Y)]))]);
                for (int i = 0; i + 3 < shares.Length; i += 4)
                {
                    // Near the corners is where a slit would be: those of the rooms as laid out, for a wall kept straight
                    // may lie a little inside a room as measured.
                    Room a = plan.Rooms[(int)(shares[i] * 0.999 * plan.Rooms.Count)];
                    Room b = plan.Rooms[(int)(shares[i + 1] * 0.999 * plan.Rooms.Count)];
                    LineString line = Factory.CreateLineString([NearCorner(a, shares[i + 2]), NearCorner(b, shares[i + 3])]);
                    Assert.True(a == b || line.Intersects(walls), $"{line} from {a.Name} to {b.Name} meets no wall");
                }
            },
            cases: 300);

    [Fact, Law]
    public void Rooms_grow_by_no_more_than_a_walls_thickness_and_do_not_overlap() =>
        BadlyMeasured.ForAll(
            rooms =>
            {
                Plan plan = Lay(rooms);
                NtsPolygon[] outlines = [.. plan.Rooms.Select(r => ToPolygon(r.Outline.Corners))];
                for (int i = 0; i < rooms.Length; i++)
                {
                    NtsPolygon written = ToPolygon(rooms[i].Outline);
                    Assert.True(outlines[i].IsValid);
                    Assert.True(written.Buffer(0.5).Contains(outlines[i]));
                    Assert.True(outlines[i].Buffer(0.5).Contains(written));
                    Assert.All(outlines[..i], o => Assert.True(o.Intersection(outlines[i]).Area < 0.02));
                }
            },
            cases: 300);

    [Fact, Law]
    public void Nonsense_is_answered_with_problems_and_never_breaks() =>
        Nonsense.ForAll(
            draft =>
            {
                List<Problem> problems = [];
                Plan plan = PlanBuilder.Build(draft, new PlanProblems("house.yaml", problems, LengthFormat.Metric));
                Assert.All(problems, p => Assert.True(p.Message.Length > 20 && !p.Message.Contains("NaN", StringComparison.Ordinal)));
                Assert.All(plan.Walls, w => Assert.True(w.LengthMetres > 0 && w.TopMetres > w.BaseMetres));
                Assert.All(plan.Walls.SelectMany(w => w.Openings.Select(o => (Wall: w, Opening: o))), o => Assert.True(
                    o.Opening.OffsetMetres >= 0
                    && o.Opening.OffsetMetres + o.Opening.WidthMetres <= o.Wall.LengthMetres + 1e-9
                    && o.Opening.SillMetres >= o.Wall.BaseMetres
                    && o.Opening.SillMetres + o.Opening.HeightMetres <= o.Wall.TopMetres + 1e-9));
            },
            cases: 1000);

    [Fact]
    public void Jagged_rooms_that_cross_within_rounding_of_a_corner_are_still_compared()
    {
        RoomDraft first = new("first", [new(5.6, 5.5), new(2.2, 0.2), new(3.3, 4.4), new(3.1, 2.5)], new Mark(1, 1));
        RoomDraft second = new(
            "second", [new(3.5, 2.1), new(4, 3.2), new(1.1, 2.8), new(4.8, 5), new(5.8, 1.3), new(5, 3.9), new(2, 0.3)], new Mark(2, 1));
        List<Problem> problems = [];
        PlanBuilder.Build(
            new PlanDraft("den", PlanSketch.Height, PlanSketch.Outer, PlanSketch.Inner, [first, second], [], []), new PlanProblems("house.yaml", problems, LengthFormat.Metric));
        Assert.Contains(problems, p => p.Message.StartsWith("rooms 'first' and 'second' overlap by ", StringComparison.Ordinal));
    }

    private static Plan Lay(RoomDraft[] rooms)
    {
        List<Problem> problems = [];
        Plan plan = PlanBuilder.Build(
            new PlanDraft("den", PlanSketch.Height, PlanSketch.Outer, PlanSketch.Inner, rooms, [], []), new PlanProblems("house.yaml", problems, LengthFormat.Metric));
        Assert.DoesNotContain(problems, p => p.Severity == Severity.Error);
        return plan;
    }

    private static Point2[] DrawnIn(IReadOnlyList<Point2> corners, int[] millimetres)
    {
        Point2 middle = new((corners[0].X + corners[2].X) / 2, (corners[0].Y + corners[2].Y) / 2);
        return
        [
            .. corners.Select((c, i) => new Point2(
                c.X + (Math.Sign(middle.X - c.X) * millimetres[2 * i] / 1000.0),
                c.Y + (Math.Sign(middle.Y - c.Y) * millimetres[(2 * i) + 1] / 1000.0))),
        ];
    }

    private static Coordinate NearCorner(Room room, double share)
    {
        IReadOnlyList<Point2> corners = room.Outline.Corners;
        Point2 corner = corners[(int)(share * 0.999 * corners.Count)];
        Point2 middle = 0.5 * (room.Outline.Least + room.Outline.Greatest);
        Point2 inside = corner + (0.05 * (middle - corner));
        return new Coordinate(inside.X, inside.Y);
    }

    private static OpeningPlace PlaceOf((int A, int B, int Kind) p) => p.Kind switch
    {
        0 => new OpeningPlace.Between($"r{p.A}", p.B > 5 ? "outside" : $"r{p.B}"),
        1 => new OpeningPlace.SideOf($"r{p.A}", (PlanSide)(p.B % 4)),
        2 => new OpeningPlace.InWall($"w{p.A}"),
        _ => new OpeningPlace.Between("room 1", $"r{p.B}"),
    };

    private static NtsPolygon ToPolygon(IReadOnlyList<Point2> corners) =>
        Factory.CreatePolygon([.. corners.Append(corners[0]).Select(c => new Coordinate(c.X, c.Y))]);
}
