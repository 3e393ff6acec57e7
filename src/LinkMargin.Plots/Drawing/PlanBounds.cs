using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Plots.Drawing;

/// <summary>A rectangle on the plan that contains all levels of a house, so that its pictures match side by side.</summary>
/// <param name="Least">Lower left corner, metres.</param>
/// <param name="Greatest">Upper right corner, metres.</param>
internal sealed record PlanBounds(Point2 Least, Point2 Greatest)
{
    /// <summary>Ground shown around the house, metres.</summary>
    public const double MarginMetres = 0.6;

    public double WidthMetres => Greatest.X - Least.X;

    public double HeightMetres => Greatest.Y - Least.Y;

    /// <summary>
    /// The width of a drawing, in the unit of the argument: the full width for a plan at least a quarter wider than high; less for
    /// a narrower one, so that the picture does not get too high, but at least six tenths.
    /// </summary>
    public double SensibleWidth(double width) =>
        width * Math.Clamp(Math.Sqrt(WidthMetres / HeightMetres / 1.25), 0.6, 1);

    public static PlanBounds Of(House house)
    {
        IEnumerable<Point2> points = house.Levels.SelectMany(PointsOf)
            .Concat(house.Fixtures.SelectMany(f => f.Corners()))
            .Concat(house.Seats.Select(s => s.Plan))
            .Concat(house.Spots.Select(s => s.Plan));
        double left = double.PositiveInfinity, bottom = left, right = double.NegativeInfinity, top = right;
        foreach (Point2 p in points)
        {
            (left, right) = (Math.Min(left, p.X), Math.Max(right, p.X));
            (bottom, top) = (Math.Min(bottom, p.Y), Math.Max(top, p.Y));
        }

        if (!(left <= right))
        {
            (left, bottom, right, top) = (0, 0, 1, 1);
        }

        return new(new(left - MarginMetres, bottom - MarginMetres), new(right + MarginMetres, top + MarginMetres));
    }

    private static IEnumerable<Point2> PointsOf(Level level) =>
        level.Walls.SelectMany(w => new[] { w.Start, w.End }).Concat(level.Rooms.SelectMany(r => r.Outline.Corners));
}
