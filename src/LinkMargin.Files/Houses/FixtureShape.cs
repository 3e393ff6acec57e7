using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Houses;

/// <summary>Where a fixture is, turned as it stands.</summary>
internal static class FixtureShape
{
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
