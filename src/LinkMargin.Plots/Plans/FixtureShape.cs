using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Plots.Plans;

/// <summary>A fixture's footprint, turned as it stands.</summary>
internal static class FixtureShape
{
    // Each side runs from the corner of the same number to the next one.
    private static readonly BoxSides[] SideFromCorner = [BoxSides.South, BoxSides.East, BoxSides.North, BoxSides.West];

    /// <summary>South-west, south-east, north-east and north-west corner before turning.</summary>
    public static IReadOnlyList<Point2> CornersOf(Fixture fixture)
    {
        double hx = fixture.SizeX / 2, hy = fixture.SizeY / 2;
        (double sine, double cosine) = Math.SinCos(fixture.TurnDegrees * Math.PI / 180);
        Point2 Turned(double x, double y) => fixture.Centre + new Point2((x * cosine) - (y * sine), (x * sine) + (y * cosine));
        return [Turned(-hx, -hy), Turned(hx, -hy), Turned(hx, hy), Turned(-hx, hy)];
    }

    /// <summary>Each upright side with whether it is there; a shell's open sides are not.</summary>
    public static IEnumerable<(Point2 From, Point2 To, bool IsThere)> SidesOf(Fixture fixture)
    {
        IReadOnlyList<Point2> corners = CornersOf(fixture);
        for (int i = 0; i < corners.Count; i++)
        {
            bool isOpen = fixture.IsShell && fixture.OpenSides.HasFlag(SideFromCorner[i]);
            yield return (corners[i], corners[(i + 1) % corners.Count], !isOpen);
        }
    }
}
