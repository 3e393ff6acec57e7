using CsCheck;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Plots.Contours;

namespace LinkMargin.Plots.Tests.Contours;

public class ContourTracerTests
{
    private static readonly Grid Grid = new(new(-4, -3), 0.1, 80, 60);

    // A chord across one 0.1 m cell at radius r bows by at most 0.1² × 2 / (8 r); interpolation adds as much again.
    [Fact, Law]
    public void Lines_of_a_cone_are_circles_of_the_right_radius() =>
        Gen.Select(Gen.Double[-1, 1], Gen.Double[-0.5, 0.5], Gen.Double[0.5, 1.9]).ForAll((x, y, radius) =>
        {
            var centre = new Point2(x, y);
            ContourLine line = Assert.Single(ContourTracer.Trace(Cones.Cone(Grid, centre, 50), 50 - radius));
            Assert.True(line.IsClosed);
            Assert.Equal(line.Points[0], line.Points[^1]);
            Assert.All(line.Points, p => Assert.Equal(radius, p.DistanceTo(centre), 2 * 0.02 / (8 * radius)));
            double length = Enumerable.Range(1, line.Points.Count - 1).Sum(i => line.Points[i - 1].DistanceTo(line.Points[i]));
            Assert.Equal(2 * Math.PI * radius, length, 0.05 * radius);
        });

    [Fact]
    public void The_line_of_a_slope_is_straight_and_runs_from_edge_to_edge()
    {
        FieldSurface slope = Cones.SurfaceOf(Grid, p => (2 * p.X) + p.Y);
        ContourLine line = Assert.Single(ContourTracer.Trace(slope, 0.313));
        Assert.False(line.IsClosed);

        // The outermost ring repeats the mean of its neighbours, so the slope holds up to the last cell's centre.
        Point2[] inner = [.. line.Points.Where(p => Math.Abs(p.Y) <= 2.95)];
        Assert.True(inner.Length > 50);
        Assert.All(inner, p => Assert.Equal(0.313, (2 * p.X) + p.Y, 9));
        Assert.True(line.Points.Max(p => p.Y) > 2.94 && line.Points.Min(p => p.Y) < -2.94);
    }

    [Fact]
    public void Every_point_of_a_line_has_the_lines_value()
    {
        FieldSurface hills = Hills();
        foreach (double level in new[] { -1.1, -0.2, 0.0, 0.4, 1.3 })
        {
            // Not on the very rim, where rounding may put a point a hair outside.
            IEnumerable<Point2> all = ContourTracer.Trace(hills, level).SelectMany(l => l.Points);
            Point2[] points = [.. all.Where(p => p is { X: > -4 and < 4, Y: > -3 and < 3 })];
            Assert.NotEmpty(points);
            Assert.All(points, p => Assert.Equal(level, hills.At(p.X, p.Y), 9));
        }
    }

    [Fact]
    public void A_hole_in_the_field_cuts_a_circle_open()
    {
        double Value(Point2 p) => p is { X: > 0, Y: > -0.2 and < 0.2 } ? double.NaN : 50 - p.DistanceTo(new(0, 0));
        ContourLine line = Assert.Single(ContourTracer.Trace(Cones.SurfaceOf(Grid, Value), 48.5));
        Assert.False(line.IsClosed);
        Assert.All(line.Points, p => Assert.False(double.IsNaN(p.X) || double.IsNaN(p.Y)));
    }

    [Fact]
    public void A_flat_field_at_the_very_level_has_no_line() =>
        Assert.Empty(ContourTracer.Trace(Cones.SurfaceOf(Grid, _ => 15), 15));

    [Fact]
    public void A_field_without_a_value_has_no_line() =>
        Assert.Empty(ContourTracer.Trace(Cones.SurfaceOf(Grid, _ => double.NaN), 15));

    // North-east and south-west corners high, the others low: with a high middle the two highs are joined and each line
    // cuts off a low corner; with a low middle each cuts off a high one.
    [Theory]
    [InlineData(3, -1)]
    [InlineData(1, -3)]
    public void A_saddle_is_settled_by_its_middle(double high, double low)
    {
        var grid = new Grid(new(0, 0), 1, 2, 2);
        FieldSurface saddle = Cones.SurfaceOf(grid, p => p.X < 1 == p.Y < 1 ? high : low);
        var middle = new Point2(1, 1);
        bool isMiddleHigh = saddle.At(1, 1) > 0;
        Assert.Equal(high + low > 0, isMiddleHigh);
        foreach ((Point2 a, Point2 b) in Pieces(ContourTracer.Trace(saddle, 0)).Where(p => IsInSquare(p.A) && IsInSquare(p.B)))
        {
            // The corner cut off is the one a piece turns towards: seen from the middle, in the direction of its own middle.
            Point2 towards = (0.5 * (a + b)) - middle;
            bool cutsHighCorner = towards.X * towards.Y > 0;
            Assert.Equal(!isMiddleHigh, cutsHighCorner);
        }
    }

    private static bool IsInSquare(Point2 p) => p is { X: >= 0.5 and <= 1.5, Y: >= 0.5 and <= 1.5 };

    private static IEnumerable<(Point2 A, Point2 B)> Pieces(IEnumerable<ContourLine> lines) =>
        lines.SelectMany(l => Enumerable.Range(1, l.Points.Count - 1).Select(i => (l.Points[i - 1], l.Points[i])));

    private static FieldSurface Hills() => Cones.SurfaceOf(Grid, p => Math.Sin(2 * p.X) + Math.Cos(3 * p.Y) + (0.3 * p.X * p.Y));
}
