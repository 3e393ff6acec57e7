using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>
/// Lines through a house. Half run from anywhere to anywhere; half are aimed exactly at an edge: where walls end, at jambs
/// and sills, at the edges of voids and of fixtures, from any direction, sometimes ending there.
/// </summary>
internal static class RandomLine
{
    private static readonly Gen<double> Reach = Gen.OneOf(Gen.Const(0.0), RandomPlace.Metres(1, 60));

    private static readonly Gen<Point3> Direction =
        from plan in Gen.OneOf(Gen.OneOf(0.0, 45, 90, 135, 180), Gen.Double[-180, 180])
        from rise in Gen.OneOf(Gen.OneOf(0.0, 0, 90), Gen.Double[-80, 80])
        select Unit(plan, rise);

    private static readonly Gen<Point3> Anywhere =
        Gen.Select(RandomPlace.OnPlan, RandomPlace.Metres(1, 80), (plan, z) => plan.At(z));

    private static readonly Gen<Line> Free = Gen.Select(Anywhere, Anywhere, (from, to) => new Line(from, to));

    /// <summary>A line through a house.</summary>
    internal static Gen<Line> In(House house)
    {
        Point3[] marks = [.. Marks.Of(house)];
        return marks.Length == 0 ? Free : Gen.OneOf(Free, Aimed(Gen.OneOf(marks)));
    }

    /// <summary>A line through one of some points, or ending there.</summary>
    internal static Gen<Line> Aimed(Gen<Point3> marks) =>
        from mark in marks
        from direction in Direction
        from before in Reach
        from after in Reach
        select new Line(Along(mark, direction, -before), Along(mark, direction, after));

    private static Point3 Unit(double planDegrees, double riseDegrees)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(planDegrees));
        (double up, double flat) = Math.SinCos(double.DegreesToRadians(riseDegrees));
        return riseDegrees == 90 ? new Point3(0, 0, 1) : new Point3(flat * cos, flat * sin, up);
    }

    private static Point3 Along(Point3 from, Point3 direction, double metres) =>
        new(from.X + (metres * direction.X), from.Y + (metres * direction.Y), from.Z + (metres * direction.Z));
}
