using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>Where walls meet, nothing slips through between them. A wall along the line may add its reflection in step: that is left out.</summary>
public sealed class TightJointTests
{
    private const double SameDb = 1e-9;

    // Beyond every front's reach on the lines drawn here.
    private const double FarMetres = 40;

    // Two walls from one point, one to each side of the line, and maybe a third one anywhere.
    private static readonly Gen<Joint> AnyJoint =
        from left in Gen.Double[20, 160]
        from right in Gen.Double[-160, -20]
        from third in Gen.OneOf(Gen.Const((double?)null), Gen.Double[-170, 170].Select(degrees => (double?)degrees))
        from losses in Gen.Double[0.5, 40].Array[3]
        from first in Gen.Double[0.5, 6]
        from second in Gen.Double[0.5, 6]
        from aside in Gen.OneOf(Gen.Const(0.0), Gen.Double[-0.4, 0.4], Gen.Double[-1e-7, 1e-7])
        from slope in Gen.Double[-0.15, 0.15]
        select new Joint(left, right, third, losses, first, second, aside, slope);

    [Fact, Law]
    public void A_line_at_a_joint_loses_at_least_what_the_least_wall_takes() =>
        AnyJoint.Where(IsBlocked).ForAll(
            joint =>
            {
                double[] lossesDb = [joint.LossesDb[0], joint.LossesDb[1]];
                double excessDb = ExcessDb(joint, joint.Walls());
                Assert.True(excessDb >= lossesDb.Min() - SameDb, $"{excessDb} dB past walls of {lossesDb[0]} and {lossesDb[1]} dB");
            },
            cases: 40);

    [Fact, Law]
    public void A_wall_that_meets_another_in_a_T_never_makes_a_hole_in_it() =>
        Gen.Select(Gen.Double[0.5, 40], Gen.Double[0.5, 40], Gen.Double[-80, 80], Gen.Double[-0.3, 0.3]).ForAll(
            (throughDb, stemDb, degrees, aside) =>
            {
                double radians = double.DegreesToRadians(degrees);
                Wall bar = SimpleHouse.FullWall("bar", new Point2(3, -FarMetres), new Point2(3, FarMetres), throughDb);
                Wall stem = SimpleHouse.FullWall(
                    "stem", new Point2(3, 0), new Point2(3 + (2 * Math.Cos(radians)), 2 * Math.Sin(radians)), stemDb);
                double Of(params Wall[] walls) => OneLink.LineDb(SimpleHouse.OfWalls(walls), new Point3(0, aside, 1), new Point3(5, aside, 1));

                Assert.True(Of(bar, stem) >= throughDb - SameDb);
                Assert.Equal(Of(bar, stem), Of(stem, bar), SameDb);
            },
            cases: 15,
            also: [1609784161218559699, 791234494086001008]);

    [Fact, Law]
    public void A_wall_cut_into_pieces_of_any_material_leaks_nowhere() =>
        Gen.Select(Gen.Double[-1.5, 1.5].Array[3], Gen.Double[0.5, 30].Array[4], Gen.Double[-40, 40]).ForAll(
            (cuts, lossesDb, degrees) =>
            {
                double[] ends = [-FarMetres, .. cuts.Order().Select((cut, i) => cut + (0.01 * i)), FarMetres];
                double tilt = Math.Tan(double.DegreesToRadians(degrees));
                Wall[] walls =
                [
                    .. lossesDb.Select((lossDb, i) => SimpleHouse.FullWall(
                        $"part {i}", new Point2(3, ends[i]), new Point2(3, ends[i + 1]), lossDb)),
                ];
                double excessDb = OneLink.LineDb(
                    SimpleHouse.OfWalls(walls), new Point3(0, -3 * tilt, 1), new Point3(5, 2 * tilt, 1));
                Assert.InRange(excessDb, lossesDb.Min() - SameDb, lossesDb.Max() + SameDb);
            },
            cases: 15);

    // Whether the joint stands between both ends: the left wall on the left, crossed or passed within the line's length.
    private static bool IsBlocked(Joint joint) => joint.Walls()[..2].Select((wall, i) => (wall, i)).All(w =>
    {
        // A wall that the line meets beyond one of its ends stands beside it, not in its way.
        Point2 along = w.wall.End - w.wall.Start;
        double at = along.Y == 0 ? double.PositiveInfinity : (joint.AsideMetres - w.wall.Start.Y) / along.Y;
        double x = w.wall.Start.X + (at * along.X);
        return at <= 0 || (x > -joint.FirstMetres + 0.01 && x < joint.SecondMetres - 0.01);
    });

    private static double ExcessDb(Joint joint, Wall[] walls) => OneLink.LineDb(
        SimpleHouse.OfWalls(walls),
        new Point3(-joint.FirstMetres, joint.AsideMetres, 1 - (joint.Slope * joint.FirstMetres)),
        new Point3(joint.SecondMetres, joint.AsideMetres, 1 + (joint.Slope * joint.SecondMetres)));

    // Angles are anticlockwise from the line, which runs along x.
    private sealed record Joint(
        double LeftDegrees,
        double RightDegrees,
        double? ThirdDegrees,
        double[] LossesDb,
        double FirstMetres,
        double SecondMetres,
        double AsideMetres,
        double Slope)
    {
        internal Wall[] Walls()
        {
            Wall At(double degrees, double lossDb)
            {
                double radians = double.DegreesToRadians(degrees);
                return SimpleHouse.FullWall(
                    "wall", default, FarMetres * new Point2(Math.Cos(radians), Math.Sin(radians)), lossDb);
            }

            Wall[] two = [At(LeftDegrees, LossesDb[0]), At(RightDegrees, LossesDb[1])];
            return ThirdDegrees is double third ? [.. two, At(third, LossesDb[2])] : two;
        }
    }
}
