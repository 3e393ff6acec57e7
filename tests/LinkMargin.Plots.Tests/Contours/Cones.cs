using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Contours;

namespace LinkMargin.Plots.Tests.Contours;

/// <summary>Surfaces whose lines of equal value are known in closed form.</summary>
internal static class Cones
{
    private static readonly Spot Spot = new("spot", 0, new(0, 0), 1);

    public static Field FieldOf(Grid grid, Func<Point2, double> value) => new(
        Spot,
        0,
        0.7,
        grid,
        [
            .. from row in Enumerable.Range(0, grid.Rows)
               from column in Enumerable.Range(0, grid.Columns)
               select value(grid.CentreOf(column, row)),
        ]);

    public static FieldSurface SurfaceOf(Grid grid, Func<Point2, double> value) => new(FieldOf(grid, value), [], evenings: 0);

    /// <summary>Height minus the distance from a centre: lines are circles, and bilinear steps barely differ from it.</summary>
    public static FieldSurface Cone(Grid grid, Point2 centre, double height) =>
        SurfaceOf(grid, p => height - p.DistanceTo(centre));
}
