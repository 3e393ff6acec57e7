using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Contours;

namespace LinkMargin.Plots.Tests.Contours;

public class FieldSurfaceTests
{
    private static readonly Grid Grid = new(new(2, -1), 0.5, 12, 8);

    [Fact]
    public void At_a_cells_centre_the_surface_is_the_cell()
    {
        FieldSurface surface = Cones.SurfaceOf(Grid, p => (3 * p.X) - p.Y);
        Point2 centre = Grid.CentreOf(5, 2);
        Assert.Equal((3 * centre.X) - centre.Y, surface.At(centre.X, centre.Y), 12);
    }

    // Row 0 is the smallest y: a field that falls northwards must fall northwards on the surface.
    [Fact]
    public void North_is_up()
    {
        FieldSurface surface = Cones.SurfaceOf(Grid, p => -p.Y);
        Assert.True(surface.At(4, 0) > surface.At(4, 2));
    }

    [Fact]
    public void The_surface_reaches_past_the_last_cell_and_not_farther()
    {
        FieldSurface surface = Cones.SurfaceOf(Grid, _ => 7);
        Assert.Equal(7, surface.At(2, -1), 12);
        Assert.True(double.IsNaN(surface.At(1.7, 0)));
        Assert.True(double.IsNaN(surface.At(4, 3.3)));
    }

    [Fact]
    public void A_hole_stays_a_hole()
    {
        FieldSurface surface = Cones.SurfaceOf(Grid, p => p.DistanceTo(new(5, 1)) < 1.3 ? double.NaN : 7);
        Assert.True(double.IsNaN(surface.At(5, 1)));
        Assert.Equal(7, surface.At(2.5, 2), 12);
    }

    [Fact]
    public void Evening_out_keeps_a_slope_and_stays_inside_its_room()
    {
        Room west = Rectangle("west", 2, 5), east = Rectangle("east", 5, 8);
        Field step = Cones.FieldOf(Grid, p => p.X < 5 ? p.Y : 40 + p.Y);
        var surface = new FieldSurface(step, [west, east], evenings: 3);
        Assert.Equal(0.75, surface.At(4.75, 0.75), 9);
        Assert.Equal(40.75, surface.At(5.25, 0.75), 9);

        var open = new FieldSurface(step, [], evenings: 3);
        Assert.InRange(open.At(4.75, 0.75), 5, 35);
    }

    private static Room Rectangle(string name, double left, double right) =>
        new(name, new Polygon([new(left, -1), new(right, -1), new(right, 3), new(left, 3)]));
}
