using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Scenes;

/// <summary>A line through the place where walls join meets them once: never not at all, never twice.</summary>
public sealed class CornerTests
{
    private static readonly Point2 Joint = new(3, 2);

    // Whole degrees and a little more, so that lines run along the walls of right-angled houses too.
    private static readonly Gen<double> Degrees = Gen.OneOf(Gen.Int[0, 359].Select(i => (double)i), Gen.Double[0, 360]);

    [Fact, Law]
    public void An_L_corner_counts_once_from_every_side() =>
        EachWay(0, (direction, motion) => AssertOnce(
            [Arm("weak", 0, 3), Arm("strong", 90, 7)], "strong", direction, motion, alongAllowed: ["weak", "strong"]));

    [Fact, Law]
    public void A_corner_of_any_angle_counts_once_from_every_side() =>
        Gen.Select(Gen.Double[5, 175], Gen.Int[0, 359]).ForAll((angle, direction) => AssertOnce(
            [Arm("weak", 0, 3), Arm("strong", angle, 7)], "strong", direction, null, alongAllowed: ["weak", "strong"]));

    [Fact, Law]
    public void A_straight_joint_counts_once_from_every_side_but_along() =>
        EachWay(1, (direction, motion) => AssertOnce(
            [Arm("weak", 0, 3), Arm("strong", 180, 7)], "strong", direction, motion, alongAllowed: []));

    [Fact, Law]
    public void A_T_joint_counts_once_from_every_side() =>
        EachWay(0, (direction, motion) => AssertOnce(
            [Through("weak", 0, 3), Arm("strong", 90, 7)], "strong", direction, motion, alongAllowed: ["weak", "strong"]));

    [Fact, Law]
    public void Walls_that_run_through_each_other_count_once_where_they_do() =>
        EachWay(0, (direction, motion) => AssertOnce(
            [Through("weak", 0, 3), Through("strong", 90, 7)], "strong", direction, motion, alongAllowed: ["weak", "strong"]));

    [Fact, Law]
    public void A_joint_of_four_walls_counts_once_from_every_side() =>
        EachWay(0, (direction, motion) => AssertOnce(
            [Arm("a", 0, 3), Arm("b", 90, 3), Arm("strong", 180, 7), Arm("c", 270, 3)],
            "strong",
            direction,
            motion,
            alongAllowed: ["a", "b", "strong", "c"]));

    [Fact, Law]
    public void A_line_that_ends_in_a_corner_counts_it_once() =>
        EachWay(1, (direction, motion) =>
        {
            House house = Moved([Arm("weak", 0, 3), Arm("strong", 90, 7)], motion);
            Point2 there = motion.Of(Joint + Step(direction, 2));
            Assert.Single(SimpleHouse.Crossings(house, there.At(1), motion.Of(Joint).At(1)));
            Assert.Single(SimpleHouse.Crossings(house, motion.Of(Joint).At(1), there.At(1.3)));
        });

    [Fact]
    public void Walls_that_stand_on_one_another_count_once_where_they_meet()
    {
        Level[] levels = [OneWall("lower", 0), OneWall("upper", SimpleHouse.HeightMetres)];
        House house = SimpleHouse.Of(levels);
        Assert.Equal(["lower"], SimpleHouse.Names(house, new Point3(0, 0, 2.3), new Point3(6, 0, 2.3)));
        Assert.Equal(["lower"], SimpleHouse.Names(house, new Point3(0, 0, 2.4), new Point3(6, 0, 2.4)));
        Assert.Equal(["lower"], SimpleHouse.Names(house, new Point3(0, 0, 1.9), new Point3(6, 0, 2.9)));
        Assert.Equal(["upper"], SimpleHouse.Names(house, new Point3(0, 0, 2.5), new Point3(6, 0, 2.5)));

        static Level OneWall(string name, double elevation) => new(name, elevation, SimpleHouse.HeightMetres)
        {
            Walls = [SimpleHouse.FullWall(name, new Point2(3, -2), new Point2(3, 2), name == "lower" ? 6 : 5)],
        };
    }

    [Fact]
    public void A_gap_is_let_through_and_a_touch_is_not()
    {
        House house = SimpleHouse.OfWalls(SimpleHouse.FullWall("w", new Point2(0, 0), new Point2(1, 0), 3));
        Assert.Equal(["w"], At(1));
        Assert.Equal(["w"], At(1 + 0.5e-8));
        Assert.Empty(At(1 + 2e-8));

        string[] At(double x) => SimpleHouse.Names(house, new Point3(x, -1, 1), new Point3(x, 1, 1));
    }

    [Fact, Law]
    public void A_line_along_a_wall_meets_nothing_and_a_slant_across_it_does()
    {
        House house = SimpleHouse.OfWalls(SimpleHouse.FullWall("w", new Point2(0, 0), new Point2(10, 0), 3));
        Assert.Empty(Slanting(0));
        Assert.Empty(Slanting(0.9e-5));
        Assert.Equal(["w"], Slanting(1.1e-5));

        string[] Slanting(double slope) =>
            SimpleHouse.Names(house, new Point3(0, -5 * slope, 1), new Point3(10, 5 * slope, 1));
    }

    private static void EachWay(int avoid, Action<double, HouseMotion> check) =>
        Gen.Select(Degrees.Where(d => avoid == 0 || Math.Abs(Math.IEEERemainder(d, 90)) > 0.01), HouseMotion.Any)
            .ForAll(check, cases: 500);

    // Exactly one crossing; and it is the wall that takes most unless the line runs along that one.
    private static void AssertOnce(
        Wall[] walls, string strongest, double direction, HouseMotion? moved, string[] alongAllowed)
    {
        HouseMotion motion = moved ?? new HouseMotion(false, 0, default);
        House house = Moved(walls, motion);
        Point2 from = motion.Of(Joint - Step(direction, 1.7)), to = motion.Of(Joint + Step(direction, 1.3));
        Crossing crossing = Assert.Single(SimpleHouse.Crossings(house, from.At(0.8), to.At(1.6)));
        bool along = walls.Where(w => w.Name == strongest).All(w =>
            Math.Abs(Point2.Cross(Step(direction, 1), w.End - w.Start)) <= 1e-5 * w.LengthMetres);
        Assert.Equal(along, crossing.Name != strongest);
        Assert.True(crossing.Name == strongest || alongAllowed.Contains(crossing.Name));
        Assert.Equal(1.7 * Math.Sqrt((3 * 3) + (0.8 * 0.8)) / 3, crossing.DistanceMetres, 1e-6);
    }

    private static House Moved(Wall[] walls, HouseMotion motion) => motion.Of(SimpleHouse.OfWalls(walls));

    private static Wall Arm(string name, double degrees, double lossDb) =>
        SimpleHouse.FullWall(name, Joint, Joint + Step(degrees, 2), lossDb);

    private static Wall Through(string name, double degrees, double lossDb) =>
        SimpleHouse.FullWall(name, Joint - Step(degrees, 1), Joint + Step(degrees, 2), lossDb);

    private static Point2 Step(double degrees, double metres)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(degrees));
        return new Point2(metres * cos, metres * sin);
    }
}
