using CsCheck;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Plots.Contours;

namespace LinkMargin.Plots.Tests.Contours;

public class HatchTests
{
    private static readonly Grid Grid = new(new(-4, -3), 0.1, 80, 60);

    [Fact, Law]
    public void Strokes_stop_on_the_circle_where_a_cone_reaches_the_value() =>
        Gen.Select(Gen.Double[0.8, 2.5], Gen.Double[0.03, 0.2]).ForAll((radius, spacing) =>
        {
            HatchLine[] lines = [.. Hatch.Below(Cones.Cone(Grid, new(0, 0), 50), 50 - radius, spacing)];
            Assert.NotEmpty(lines);
            Assert.All(lines, l => Assert.True(IsOnCircleOrEdge(l.From, radius) && IsOnCircleOrEdge(l.To, radius), $"{l}"));
            Assert.All(lines, l => Assert.True(Middle(l).DistanceTo(new(0, 0)) > radius - 0.02));
        });

    // Strokes at a spacing s over an area A have together a length of about A / s.
    [Fact]
    public void Strokes_cover_the_ground_outside_the_circle_evenly()
    {
        const double Radius = 2, Spacing = 0.05;
        double length = Hatch.Below(Cones.Cone(Grid, new(0, 0), 50), 50 - Radius, Spacing).Sum(l => l.From.DistanceTo(l.To));
        double area = (8 * 6) - (Math.PI * Radius * Radius);
        Assert.Equal(area / Spacing, length, 0.01 * area / Spacing);
    }

    [Fact]
    public void Nothing_is_hatched_where_all_is_above() =>
        Assert.Empty(Hatch.Below(Cones.SurfaceOf(Grid, _ => 15), 15, 0.1));

    [Fact]
    public void Ground_without_a_value_is_not_hatched()
    {
        FieldSurface half = Cones.SurfaceOf(Grid, p => p.X > 0 ? double.NaN : 0);
        Assert.All(Hatch.Below(half, 15, 0.1), l => Assert.True(Math.Max(l.From.X, l.To.X) < 0.11));
    }

    [Fact]
    public void Strokes_rise_to_the_right_at_45_degrees() =>
        Assert.All(
            Hatch.Below(Cones.Cone(Grid, new(0, 0), 50), 48, 0.1),
            l => Assert.Equal(l.To.X - l.From.X, l.To.Y - l.From.Y, 9));

    private static bool IsOnCircleOrEdge(Point2 p, double radius) =>
        Math.Abs(p.DistanceTo(new(0, 0)) - radius) < 0.02
        || Math.Abs(Math.Abs(p.X) - 4) < 1e-9
        || Math.Abs(Math.Abs(p.Y) - 3) < 1e-9;

    private static Point2 Middle(HatchLine line) => 0.5 * (line.From + line.To);
}
