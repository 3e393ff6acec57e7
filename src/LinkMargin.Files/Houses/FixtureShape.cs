using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Houses;

/// <summary>Where a fixture is, turned as it stands.</summary>
internal static class FixtureShape
{
    /// <summary>
    /// Whether a place on the fixture's level lies in it. With a positive slack a place a little outside counts as in,
    /// with a negative one a place just inside its faces does not.
    /// </summary>
    public static bool Contains(Fixture fixture, Point2 plan, double height, double slackMetres)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(fixture.TurnDegrees));
        Point2 from = plan - fixture.Centre;
        double x = (cos * from.X) + (sin * from.Y), y = (cos * from.Y) - (sin * from.X);
        return Math.Abs(x) <= (fixture.SizeX / 2) + slackMetres
            && Math.Abs(y) <= (fixture.SizeY / 2) + slackMetres
            && height >= fixture.FromMetres - slackMetres
            && height <= fixture.ToMetres + slackMetres;
    }

    /// <summary>The corners of its footprint.</summary>
    public static IEnumerable<Point2> Corners(Fixture fixture)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(fixture.TurnDegrees));
        foreach ((int east, int north) in new[] { (-1, -1), (1, -1), (1, 1), (-1, 1) })
        {
            double x = east * fixture.SizeX / 2, y = north * fixture.SizeY / 2;
            yield return fixture.Centre + new Point2((cos * x) - (sin * y), (sin * x) + (cos * y));
        }
    }
}
