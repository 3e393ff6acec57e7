using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using NetTopologySuite.Algorithm.Distance;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Union;

namespace LinkMargin.Files.Tests.Plans;

/// <summary>Laws of laying out a plan, over random plans.</summary>
public sealed class PlanLawsTests
{
    private const int Plans = 100;

    private static readonly GeometryFactory Factory = new();

    [Fact, Law]
    public void The_order_of_rooms_does_not_change_the_walls() =>
        Gen.Select(RandomRooms.Any, Gen.Int[0, 1_000_000]).ForAll(
            (rooms, seed) =>
            {
                IReadOnlyList<RoomDraft> drafts = rooms.Drafts(p => p);
                RoomDraft[] shuffled = [.. drafts];
                new Random(seed).Shuffle(shuffled);
                Assert.Equal(WallSet(Lay(drafts), p => p), WallSet(Lay(shuffled), p => p));
            },
            cases: Plans);

    [Fact, Law]
    public void The_length_of_all_walls_is_the_closed_form() =>
        RandomRooms.Any.ForAll(
            rooms => Assert.Equal(rooms.WallMetres, Lay(rooms.Drafts(p => p)).Walls.Sum(w => w.LengthMetres), 1e-9),
            cases: Plans);

    [Fact, Law]
    public void A_wall_between_two_rooms_is_inner_and_every_other_outer() =>
        RandomRooms.Any.ForAll(
            rooms => Assert.All(
                Lay(rooms.Drafts(p => p)).Walls,
                w => Assert.Equal(
                    w.Name.EndsWith("| outside", StringComparison.Ordinal) ? PlanSketch.Outer : PlanSketch.Inner, w.Material)),
            cases: Plans);

    [Fact, Law]
    public void A_plan_moved_and_turned_by_quarter_turns_gives_the_moved_walls() =>
        Gen.Select(RandomRooms.Any, Gen.Int[1, 3], Gen.Double[-50, 50], Gen.Double[-50, 50]).ForAll(
            (rooms, quarters, dx, dy) =>
            {
                Point2 Move(Point2 p)
                {
                    for (int i = 0; i < quarters; i++)
                    {
                        p = new Point2(-p.Y, p.X);
                    }

                    return p + new Point2(dx, dy);
                }

                Assert.Equal(WallSet(Lay(rooms.Drafts(p => p)), Move), WallSet(Lay(rooms.Drafts(Move)), p => p));
            },
            cases: Plans);

    [Fact, Law]
    public void A_plan_turned_by_any_angle_gives_the_turned_walls() =>
        Gen.Select(RandomRooms.Any, Gen.Double[0, 2 * Math.PI]).ForAll(
            (rooms, angle) =>
            {
                Point2 Turn(Point2 p) => new(
                    (p.X * Math.Cos(angle)) - (p.Y * Math.Sin(angle)), (p.X * Math.Sin(angle)) + (p.Y * Math.Cos(angle)));

                Assert.Equal(WallSet(Lay(rooms.Drafts(p => p)), Turn), WallSet(Lay(rooms.Drafts(Turn)), p => p));
            },
            cases: Plans);

    [Fact, Law]
    public void The_walls_cover_the_rooms_outlines_and_nothing_else() =>
        RandomRooms.Any.ForAll(
            rooms =>
            {
                Plan plan = Lay(rooms.Drafts(p => p));
                Geometry walls = UnaryUnionOp.Union(plan.Walls.Select(w => Line(w.Start, w.End)).ToArray<Geometry>());
                Geometry outlines = UnaryUnionOp.Union(
                    rooms.Drafts(p => p).Select(r => Factory.CreatePolygon(Ring(r.Outline)).Boundary).ToArray());
                Assert.True(DiscreteHausdorffDistance.Distance(walls, outlines, 0.1) < 0.002);
            },
            cases: Plans);

    [Fact, Law]
    public void No_wall_lies_along_another() =>
        RandomRooms.Any.ForAll(
            rooms =>
            {
                LineString[] walls = [.. Lay(rooms.Drafts(p => p)).Walls.Select(w => Line(w.Start, w.End))];
                double together = UnaryUnionOp.Union(walls.ToArray<Geometry>()).Length;
                Assert.Equal(walls.Sum(w => w.Length), together, 1e-9);
            },
            cases: Plans);

    [Fact, Law]
    public void Clear_rooms_with_walls_between_give_the_walls_of_rooms_that_touch() =>
        Gen.Select(RandomRooms.Any, Gen.Int[2, 30]).ForAll(
            (rooms, gapCentimetres) =>
            {
                // Each line of the grid is opened by the same gap; what is inside grows back to the middle of it.
                double gap = gapCentimetres / 100.0;
                RandomRooms opened = new(
                    [.. rooms.X.Select((x, i) => x + (i * gap))], [.. rooms.Y.Select((y, i) => y + (i * gap))], rooms.Cells);
                RoomDraft[] clear =
                [
                    .. opened.Rectangles.Select((r, i) => new RoomDraft(
                        FormattableString.Invariant($"r{i}"),
                        Corners(r.West, r.South, r.East - gap, r.North - gap),
                        default)),
                ];
                Plan plan = Lay(clear);
                Assert.Equal(Lay(rooms.Drafts(p => p)).Walls.Count, plan.Walls.Count);
                double growth = opened.X[^1] - gap;
                Assert.Equal(
                    growth * (opened.Y[^1] - gap), plan.Rooms.Sum(r => r.Outline.AreaSquareMetres), 1e-6);
            },
            cases: Plans);

    [Fact, Law]
    public void Clear_rooms_measured_a_centimetre_out_give_the_same_walls_still() =>
        RandomRooms.Any.SelectMany(r => Gen.Int[40, 60].Array[4 * r.Cells.Length].Select(i => (Rooms: r, Insets: i))).ForAll(
            plan =>
            {
                double Inset(int room, int side) => plan.Insets[(4 * room) + side] / 1000.0;
                RoomDraft[] clear =
                [
                    .. plan.Rooms.Rectangles.Select((r, i) => new RoomDraft(
                        FormattableString.Invariant($"r{i}"),
                        Corners(r.West + Inset(i, 0), r.South + Inset(i, 1), r.East - Inset(i, 2), r.North - Inset(i, 3)),
                        default)),
                ];
                Assert.Equal(
                    Lay(plan.Rooms.Drafts(p => p)).Walls.Select(w => w.Name).Order(StringComparer.Ordinal),
                    Lay(clear).Walls.Select(w => w.Name).Order(StringComparer.Ordinal));
            },
            cases: Plans);

    [Fact, Law]
    public void The_same_plan_drawn_by_its_walls_has_the_same_rooms() =>
        RandomRooms.Any.ForAll(
            rooms =>
            {
                Plan byRooms = Lay(rooms.Drafts(p => p));
                WallDraft[] walls =
                [
                    .. byRooms.Walls.Select(w => new WallDraft(null, [w.Start, w.End], w.Material, 0, null, default)),
                ];
                List<Problem> problems = [];
                Plan byWalls = PlanBuilder.Build(
                    new PlanDraft("den", PlanSketch.Height, null, null, [], walls, []), new PlanProblems("house.yaml", problems, LengthFormat.Metric));
                Assert.Empty(problems);
                Assert.Equal(Areas(byRooms), Areas(byWalls));
            },
            cases: Plans);

    [Fact, Law]
    public void Walls_written_along_every_edge_replace_every_wall() =>
        RandomRooms.Any.ForAll(
            rooms =>
            {
                Plan plain = Lay(rooms.Drafts(p => p));
                WallDraft[] walls =
                [
                    .. plain.Walls.Select(w => new WallDraft(null, [w.End, w.Start], PlanSketch.Brick, 0, null, default)),
                ];
                Plan replaced = Lay(rooms.Drafts(p => p), walls, null);
                Assert.Equal(
                    plain.Walls.Select(w => (w.Name, w.Start, w.End)).ToHashSet(),
                    replaced.Walls.Select(w => (w.Name, w.Start, w.End)).ToHashSet());
                Assert.All(replaced.Walls, w => Assert.Equal(PlanSketch.Brick, w.Material));
            },
            cases: Plans);

    [Fact, Law]
    public void A_door_between_any_two_rooms_that_touch_lies_inside_their_wall() =>
        RandomRooms.Any.ForAll(
            rooms =>
            {
                IReadOnlyList<RoomDraft> drafts = rooms.Drafts(p => p);
                string[][] pairs =
                [
                    .. Lay(drafts).Walls.Where(w => w.Material == PlanSketch.Inner).Select(w => w.Name.Split(" | ")),
                ];
                OpeningDraft[] doors =
                [
                    .. pairs.Select(p => new OpeningDraft(
                        null, OpeningKind.Door, new OpeningPlace.Between(p[1], p[0]), null, 0.7, 0, 2, null, false, default)),
                ];
                Plan plan = Lay(drafts, [], PlanSketch.Outer, doors);
                Assert.Equal(pairs.Length, plan.Walls.Sum(w => w.Openings.Count));
                Assert.All(
                    plan.Walls.Where(w => w.Openings.Count > 0),
                    w => Assert.Equal((w.LengthMetres - 0.7) / 2, Assert.Single(w.Openings).OffsetMetres, 1e-9));
            },
            cases: Plans);

    private static Plan Lay(IReadOnlyList<RoomDraft> rooms) => Lay(rooms, [], PlanSketch.Outer);

    private static Plan Lay(
        IReadOnlyList<RoomDraft> rooms, IReadOnlyList<WallDraft> walls, Material? outer, IReadOnlyList<OpeningDraft>? openings = null)
    {
        List<Problem> problems = [];
        PlanDraft draft = new("den", PlanSketch.Height, outer, PlanSketch.Inner, rooms, walls, openings ?? []);
        Plan plan = PlanBuilder.Build(draft, new PlanProblems("house.yaml", problems, LengthFormat.Metric));
        Assert.Empty(problems);
        return plan;
    }

    /// <summary>Walls whichever way they run, to a hundredth of a millimetre, with their materials and rooms.</summary>
    private static HashSet<string> WallSet(Plan plan, Func<Point2, Point2> move) =>
        [.. plan.Walls.Select(w => FormattableString.Invariant(
            $"{Sorted(w.Name.Split(" | "))} {Sorted([Place(move(w.Start)), Place(move(w.End))])} {w.Material.Name}"))];

    private static string Sorted(string[] words) => string.Join(" | ", words.Order(StringComparer.Ordinal));

    // A place on the edge between two roundings would flicker, so it is shifted by a number no plan of the tests holds.
    private static string Place(Point2 p) =>
        FormattableString.Invariant($"{Math.Floor((p.X + 0.00000391) * 1e5)},{Math.Floor((p.Y + 0.00000391) * 1e5)}");

    private static double[] Areas(Plan plan) =>
        [.. plan.Rooms.Select(r => Math.Round(r.Outline.AreaSquareMetres, 6)).Order()];

    private static LineString Line(Point2 a, Point2 b) => Factory.CreateLineString([new(a.X, a.Y), new(b.X, b.Y)]);

    private static Coordinate[] Ring(IReadOnlyList<Point2> corners) =>
        [.. corners.Append(corners[0]).Select(c => new Coordinate(c.X, c.Y))];

    private static Point2[] Corners(double west, double south, double east, double north) =>
        [new(west, south), new(east, south), new(east, north), new(west, north)];
}
