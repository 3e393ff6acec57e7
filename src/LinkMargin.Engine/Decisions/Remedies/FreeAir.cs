using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>Whether there is free air in front of a side of a hollow fixture, so that leaving it open lets anything out.</summary>
internal static class FreeAir
{
    // What merely touches the edge of a side is not in front of it.
    private const double InsetMetres = 0.01;
    private const double LeastSquareMetres = 1e-6;
    private const double SlackMetres = 1e-9;

    /// <summary>
    /// Whether nothing solid is within <see cref="ImproveRequest.LeastFreeAirMetres"/> in front of one side: no wall, no other fixture, no
    /// ceiling.
    /// </summary>
    public static bool IsBefore(House house, Fixture fixture, BoxSides side)
    {
        bool isTop = side == BoxSides.Top;
        Level level = house.Levels[fixture.LevelIndex];
        double low = isTop ? fixture.ToMetres : fixture.FromMetres + InsetMetres;
        double high = isTop ? fixture.ToMetres + ImproveRequest.LeastFreeAirMetres : fixture.ToMetres - InsetMetres;
        Polygon before = Before(fixture, side);
        return !(isTop && high > level.HeightMetres + SlackMetres)
            && !house.Fixtures.Any(other => other.LevelIndex == fixture.LevelIndex
                && other != fixture
                && IsBetween(other.FromMetres, other.ToMetres)
                && Overlaps(Box(other, -other.SizeX / 2, other.SizeX / 2, -other.SizeY / 2, other.SizeY / 2)))
            && !level.Walls.Any(wall => IsBetween(wall.BaseMetres, wall.TopMetres) && Overlaps(WallFaces.Body(wall)));

        bool IsBetween(double from, double to) => from < high - SlackMetres && to > low + SlackMetres;

        bool Overlaps(Polygon solid) => Overlap.Of(new PlanFrame(1, 0), before, solid).SquareMetres > LeastSquareMetres;
    }

    private static Polygon Before(Fixture fixture, BoxSides side)
    {
        double east = fixture.SizeX / 2, north = fixture.SizeY / 2;
        double insetX = Math.Min(InsetMetres, east / 2), insetY = Math.Min(InsetMetres, north / 2);
        double x0 = insetX - east, x1 = east - insetX, y0 = insetY - north, y1 = north - insetY;
        return side switch
        {
            BoxSides.West => Box(fixture, -east - ImproveRequest.LeastFreeAirMetres, -east, y0, y1),
            BoxSides.East => Box(fixture, east, east + ImproveRequest.LeastFreeAirMetres, y0, y1),
            BoxSides.South => Box(fixture, x0, x1, -north - ImproveRequest.LeastFreeAirMetres, -north),
            BoxSides.North => Box(fixture, x0, x1, north, north + ImproveRequest.LeastFreeAirMetres),
            BoxSides.Top => Box(fixture, x0, x1, y0, y1),
            _ => throw new ArgumentOutOfRangeException(nameof(side), side, "Not one side that can be opened."),
        };
    }

    // A rectangle in a fixture's own directions, about its centre.
    private static Polygon Box(Fixture fixture, double west, double east, double south, double north)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(fixture.TurnDegrees));
        var frame = new PlanFrame(cos, sin);
        return new Polygon(
        [
            fixture.Centre + frame.ToPlan(west, south),
            fixture.Centre + frame.ToPlan(east, south),
            fixture.Centre + frame.ToPlan(east, north),
            fixture.Centre + frame.ToPlan(west, north),
        ]);
    }
}
