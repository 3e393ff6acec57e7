using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>
/// Walls that end near the straight line, against the single edge of Recommendation ITU-R P.526-16, section 4.1, equations
/// (26) and (31).
/// </summary>
public sealed class EdgeOnTheLineTests
{
    // Equation (31) comes to 6.033 dB on the line, where the exact share of the field is a half, 6.021 dB; the model holds to
    // the half, and moves the formula by that.
    private const double FormulaDb = 0.02;

    // Ends of walls this far away are out of every front's reach.
    private const double FarMetres = 30;

    private const double LowerEdgeMetres = 4;

    private static readonly Gen<double> AnyLeg = Gen.Double[0.8, 8];

    [Theory, Law]
    [InlineData(-0.7)]
    [InlineData(-0.5)]
    [InlineData(-0.2)]
    [InlineData(0)]
    [InlineData(0.3)]
    [InlineData(1)]
    [InlineData(1.8)]
    [InlineData(2.4)]
    [InlineData(2.9)]
    public void An_opaque_half_plane_is_a_knife_edge(double v) =>
        Gen.Select(AnyLeg, AnyLeg, Gen.Double[50, 130]).ForAll(
            (first, second, degrees) => Assert.Equal(
                KnifeEdge.LossDb(v), HalfPlaneDb(v, first, second, degrees, OneLink.Opaque), FormulaDb),
            cases: 3);

    [Theory]
    [InlineData(-0.79)]
    [InlineData(-1.5)]
    [InlineData(-3.5)]
    [InlineData(-6)]
    public void A_wall_that_ends_clear_of_the_line_costs_nothing(double v) =>
        Assert.Equal(0, HalfPlaneDb(v, 2, 3, 90, OneLink.Opaque), 1e-6);

    [Theory]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(2)]
    public void The_end_of_a_light_partition_is_a_gentle_step(double lossDb)
    {
        Material light = SimpleHouse.Material("light", lossDb);
        double before = 0;
        for (double v = -3; v <= 5; v += 0.5)
        {
            double here = HalfPlaneDb(v, 2, 3, 90, light);
            Assert.InRange(here, before - 1e-9, lossDb + 1e-9);
            before = here;
        }

        Assert.Equal(lossDb, before, 0.001); // beyond the edge's reach nothing comes round any more
        double passed = Math.Pow(10, -lossDb / 20);
        Assert.Equal(-20 * Math.Log10((1 + passed) / 2), HalfPlaneDb(0, 2, 3, 90, light), 1e-6);
    }

    [Theory, Law]
    [InlineData(-0.5)]
    [InlineData(0)]
    [InlineData(0.7)]
    [InlineData(2.2)]
    public void A_low_wall_and_one_that_hangs_from_the_ceiling_are_knife_edges_too(double v) =>
        Gen.Select(Gen.Double[0.8, 4], Gen.Double[0.8, 4], Gen.Double[-0.08, 0.08], Gen.Bool).ForAll(
            (first, second, slope, hangs) =>
            {
                // The edge stands square to the line, which rises by the slope: distances and heights along it and across it. It stays 10 cm and
                // more from the floor and the ceiling: a steeper line would have it there, and the wall would close the room.
                double height = v / Math.Sqrt(2 / OneLink.WavelengthMetres * ((1 / first) + (1 / second)));
                (double sin, double cos) = Math.SinCos(Math.Atan(slope));
                double x = first * cos, z = 1.2 + (first * sin);
                double edge = hangs ? z - (height / cos) : z + (height / cos);
                Wall wall = FullWall(new Point2(x, -FarMetres), new Point2(x, FarMetres), OneLink.Opaque);
                wall = hangs ? wall with { BaseMetres = edge } : wall with { TopMetres = edge };
                double excessDb = OneLink.LineDb(
                    SimpleHouse.OfWalls(wall),
                    new Point3(0, 0, 1.2),
                    new Point3((first + second) * cos, 0, 1.2 + ((first + second) * sin)));

                // Upright over the line the height is h/cos, and the place on the line moves by h·tan: 0.1 dB where that shows.
                Assert.Equal(KnifeEdge.LossDb(v), excessDb, FormulaDb + 0.1);
            },
            cases: 8,
            also: [4245910805715420872, 2101613927411094549]);

    /// <summary>
    /// A line that rises along a wall passes its lower edge at the distance between two lines in space, however far below the place where it crosses
    /// the wall's plane that edge is.
    /// </summary>
    [Fact, Law]
    public void A_wall_along_a_steep_line_is_a_knife_edge_at_the_distance_of_its_lower_edge() =>
        Gen.Select(Gen.Double[-0.75, 2.9], Gen.Double[0.8, 4], Gen.Double[0.8, 4], Gen.Double[3, 85], Gen.Double[10, 50])
            .Select((v, first, second, degrees, riseDegrees) => (V: v, Line: PastLowerEdge(v, first, second, degrees, riseDegrees)))
            .Where(drawn => drawn.Line.From.Y * drawn.Line.To.Y < 0) // it crosses the wall's plane
            .ForAll(
                drawn =>
                {
                    var wall = new Wall("wall", new Point2(-FarMetres, 0), new Point2(FarMetres, 0), LowerEdgeMetres, 8, OneLink.Opaque);
                    House house = SimpleHouse.Of(new Level("hall", 0, 8) { Walls = [wall] });
                    Assert.Equal(KnifeEdge.LossDb(drawn.V), OneLink.LineDb(house, drawn.Line.From, drawn.Line.To), FormulaDb);
                },
                cases: 40);

    [Fact, Law]
    public void A_wall_drawn_twice_or_in_overlapping_parts_counts_once() =>
        Gen.Select(Gen.Double[-2, 3], Gen.Double[0.5, 20], Gen.Double[-3, 3], Gen.Double[0, 4]).ForAll(
            (v, lossDb, from, overlap) =>
            {
                Point2[] ends = HalfPlane(v, 2, 3, 90);
                Material material = SimpleHouse.Material("m", lossDb);
                Wall whole = FullWall(ends[0], ends[1], material);
                Wall lower = FullWall(ends[0], new Point2(ends[0].X, Math.Min(from + overlap, ends[1].Y)), material);
                Wall upper = FullWall(new Point2(ends[0].X, Math.Min(from, ends[1].Y - 0.1)), ends[1], material);
                double Of(params Wall[] walls) => OneLink.LineDb(SimpleHouse.OfWalls(walls), new Point3(0, 0, 1), new Point3(5, 0, 1));

                // Ends that rounding puts a hair apart on the front are one.
                Assert.Equal(Of(whole), Of(whole, whole), 1e-6);
                Assert.Equal(Of(whole), Of(lower, upper), 1e-6);
            },
            cases: 8);

    // Such an end lies a hair before the plane or a hair beyond it, by rounding: in a house turned on the plan, or drawn elsewhere.
    [Fact, Law]
    public void A_line_that_ends_in_the_plane_of_a_wall_that_stops_short_loses_the_same_on_either_side_of_it() =>
        Gen.Select(AnyLeg, Gen.Double[91, 170], Gen.Double[-6, -3], Gen.Double[0.005, 3], Gen.Bool).ForAll(
            (length, degrees, exponent, wallMetres, isBackwards) =>
            {
                const double HairMetres = 1e-13; // more moves the place where a slanting wall leaves the front
                (double sin, double cos) = Math.SinCos(double.DegreesToRadians(degrees));
                Point2 along = new(cos, sin), across = new(-sin, cos), end = new(length, 0);
                Wall wall = FullWall(end + (Math.Pow(10, exponent) * along), end + (wallMetres * along), OneLink.Opaque);
                House house = SimpleHouse.OfWalls(wall);
                double Of(double metres)
                {
                    Point3 one = new(0, 0, 1), other = (end + (metres * across)).At(1);
                    return isBackwards ? OneLink.LineDb(house, other, one) : OneLink.LineDb(house, one, other);
                }

                Assert.Equal(Of(HairMetres), Of(-HairMetres), 1e-6);
            },
            cases: 20,
            also: [1000010, 1000223]);

    // A rising line that passes the lower edge of a wall on the x axis, at angles to that axis on the plan and to the level. The normal of the line and the edge
    // points away from the wall.
    private static Line PastLowerEdge(double v, double first, double second, double degrees, double riseDegrees)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(degrees));
        (double rise, double level) = Math.SinCos(double.DegreesToRadians(riseDegrees));
        var along = new Point3(level * cos, level * sin, rise);
        double length = Math.Sqrt((rise * rise) + (level * level * sin * sin));
        double apart = -v / Math.Sqrt(2 / OneLink.WavelengthMetres * ((1 / first) + (1 / second))); // (26)
        double nearestY = apart * rise / length, nearestZ = LowerEdgeMetres - (apart * level * sin / length);
        Point3 At(double metres) => new(metres * along.X, nearestY + (metres * along.Y), nearestZ + (metres * along.Z));
        return new Line(At(-first), At(second));
    }

    private static double HalfPlaneDb(double v, double first, double second, double degrees, Material material)
    {
        Point2[] ends = HalfPlane(v, first, second, degrees);
        return OneLink.LineDb(
            SimpleHouse.OfWalls(FullWall(ends[0], ends[1], material)), new Point3(0, 0, 1), new Point3(first + second, 0, 1));
    }

    // A wall from far to the right of a line along the x axis, at an angle to it, that ends abreast of its first part.
    private static Point2[] HalfPlane(double v, double first, double second, double degrees)
    {
        double height = v / Math.Sqrt(2 / OneLink.WavelengthMetres * ((1 / first) + (1 / second))); // (26)
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(degrees));
        var end = new Point2(first, height);
        return [end - (FarMetres * new Point2(cos, sin)), end];
    }

    private static Wall FullWall(Point2 start, Point2 end, Material material) =>
        new("wall", start, end, 0, SimpleHouse.HeightMetres, material);
}
