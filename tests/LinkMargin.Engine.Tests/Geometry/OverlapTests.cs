using CsCheck;
using LinkMargin.Engine.Geometry;
using NetTopologySuite.Geometries;
using NtsGeometry = NetTopologySuite.Geometries.Geometry;
using Polygon = LinkMargin.Engine.Geometry.Polygon;

namespace LinkMargin.Engine.Tests.Geometry;

/// <summary>What polygons have in common, with NetTopologySuite as the judge.</summary>
public sealed class OverlapTests
{
    private static readonly PlanFrame Upright = new(1, 0);

    // Star-shaped about a centre: simple, convex or not, whichever way round.
    private static readonly Gen<Polygon> Star =
        from x in Gen.Double[-2, 2]
        from y in Gen.Double[-2, 2]
        from radii in Gen.Double[0.2, 4].Array[3, 9]
        from turn in Gen.Double[0, 7]
        from backwards in Gen.Bool
        let corners = radii.Select((r, i) => turn + (2 * Math.PI * i / radii.Length) is double angle
            ? new Point2(x + (r * Math.Cos(angle)), y + (r * Math.Sin(angle)))
            : default)
        select new Polygon(backwards ? corners.Reverse() : corners);

    // In whole halves of a metre: edges and corners that touch.
    private static readonly Gen<Polygon> Angular =
        from x in Gen.Int[-6, 4]
        from y in Gen.Int[-6, 4]
        from width in Gen.Int[2, 8]
        from depth in Gen.Int[2, 8]
        from notchX in Gen.Int[1, 8]
        from notchY in Gen.Int[1, 8]
        select new Polygon(Corners(x, y, width, depth, Math.Min(notchX, width - 1), Math.Min(notchY, depth - 1)));

    private static readonly Gen<Polygon> Any = Gen.OneOf(Star, Angular);

    [Fact, Law]
    public void Two_polygons_share_the_area_and_middle_that_the_judge_finds() =>
        Gen.Select(Any, Any).ForAll((one, other) => IsAsJudged(
            Overlap.Of(Upright, one, other), Judged(one).Intersection(Judged(other))));

    [Fact, Law]
    public void Three_polygons_share_the_area_and_middle_that_the_judge_finds() =>
        Gen.Select(Any, Any, Any).ForAll((one, other, third) => IsAsJudged(
            Overlap.Of(Upright, one, other, third),
            Judged(one).Intersection(Judged(other)).Intersection(Judged(third))));

    [Fact, Law]
    public void A_polygon_shares_all_of_itself_with_itself() =>
        Any.ForAll(polygon => Assert.Equal(
            polygon.AreaSquareMetres, Overlap.Of(Upright, polygon, polygon).SquareMetres, 1e-9));

    [Fact, Law]
    public void A_rectangle_spreads_by_its_sides_over_the_root_of_twelve_in_the_houses_directions() =>
        Gen.Select(Gen.Double[0.5, 5], Gen.Double[0.5, 5], Gen.Double[-3, 3]).ForAll((width, depth, angle) =>
        {
            var frame = new PlanFrame(Math.Cos(angle), Math.Sin(angle));
            Point2 along = frame.ToPlan(width, 0), across = frame.ToPlan(0, depth), corner = new(3, -7);
            Overlap whole = Overlap.Of(
                frame, new Polygon([corner, corner + along, corner + along + across, corner + across]));
            Assert.Equal(width / Math.Sqrt(12), whole.SpreadMetres.X, 1e-9);
            Assert.Equal(depth / Math.Sqrt(12), whole.SpreadMetres.Y, 1e-9);
        });

    private static void IsAsJudged(Overlap overlap, NtsGeometry judged)
    {
        Assert.Equal(judged.Area, overlap.SquareMetres, 1e-9);
        if (judged.Area > 1e-3)
        {
            Assert.Equal(judged.Centroid.X, overlap.Middle.X, 1e-6);
            Assert.Equal(judged.Centroid.Y, overlap.Middle.Y, 1e-6);
        }
    }

    private static Point2[] Corners(int x, int y, int width, int depth, int notchX, int notchY) =>
    [
        .. new (int X, int Y)[] { (0, 0), (width, 0), (width, depth - notchY), (width - notchX, depth - notchY), (width - notchX, depth), (0, depth) }
            .Select(c => new Point2((x + c.X) / 2.0, (y + c.Y) / 2.0)),
    ];

    private static NetTopologySuite.Geometries.Polygon Judged(Polygon polygon) => new(new LinearRing(
    [
        .. polygon.Corners.Append(polygon.Corners[0]).Select(c => new Coordinate(c.X, c.Y)),
    ]));
}
