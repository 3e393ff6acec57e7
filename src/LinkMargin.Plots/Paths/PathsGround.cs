using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Paths;
using LinkMargin.Plots.Drawing;

namespace LinkMargin.Plots.Paths;

/// <summary>
/// How much of the plan a picture of paths shows: the ground under the paths with some of the house around it. On the whole plan
/// of a large house a short link would be too small.
/// </summary>
internal static class PathsGround
{
    private const double AboutMetres = 1.0;
    private const double LeastMetres = 4.0;

    // Limits of height over width for a panel.
    private const double FlattestRatio = 0.75;
    private const double TallestRatio = 1.5;

    public static PlanBounds Of(PathsRequest request)
    {
        PlanBounds house = PlanBounds.Of(request.House);
        Point2[] points =
        [
            request.Spot.Plan,
            request.Seat.Plan,
            .. request.Paths.Where(entry => entry.Path.Path.Kind != PathKind.Diffuse)
                .SelectMany(entry => entry.Path.Path.Points).Select(p => p.Plan),
        ];
        (double left, double right) = (points.Min(p => p.X) - AboutMetres, points.Max(p => p.X) + AboutMetres);
        (double low, double high) = (points.Min(p => p.Y) - AboutMetres, points.Max(p => p.Y) + AboutMetres);
        double width = Math.Max(LeastMetres, Math.Max(right - left, (high - low) / TallestRatio));
        double height = Math.Max(LeastMetres, Math.Max(high - low, Math.Min(width, house.WidthMetres) * FlattestRatio));
        (left, right) = Within(left, right, width, house.Least.X, house.Greatest.X);
        (low, high) = Within(low, high, height, house.Least.Y, house.Greatest.Y);
        return new PlanBounds(new(left, low), new(right, high));
    }

    // An interval of this length around the same middle, moved and shortened to stay on the plan.
    private static (double From, double To) Within(double from, double to, double length, double least, double greatest)
    {
        length = Math.Min(length, greatest - least);
        double start = Math.Clamp(((from + to) / 2) - (length / 2), least, greatest - length);
        return (start, start + length);
    }
}
