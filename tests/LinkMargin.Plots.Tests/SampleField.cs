using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Maps;

namespace LinkMargin.Plots.Tests;

/// <summary>
/// A made-up field to draw: it falls by 20 dB a decade and by a little for each wall and floor in between. It stands in
/// for the engine's own, which these tests have no need of.
/// </summary>
internal static class SampleField
{
    private const double AtOneMetreDb = 46;
    private const double FloorDb = 13;

    public static Field Make(House house, Spot spot, int levelIndex, double cellMetres = 0.1)
    {
        Level level = house.Levels[levelIndex];
        IEnumerable<Point2> corners = house.Levels.SelectMany(l => l.Rooms).SelectMany(r => r.Outline.Corners);
        double right = corners.Max(c => c.X), top = corners.Max(c => c.Y);
        var grid = new Grid(new(0, 0), cellMetres, (int)Math.Ceiling(right / cellMetres), (int)Math.Ceiling(top / cellMetres));
        double[] margins = new double[grid.Count];
        for (int row = 0; row < grid.Rows; row++)
        {
            for (int column = 0; column < grid.Columns; column++)
            {
                Point2 here = grid.CentreOf(column, row);
                bool isInside = level.Rooms.Any(r => r.Outline.Contains(here));
                margins[(row * grid.Columns) + column] = isInside ? MarginAt(house, spot, levelIndex, here) : double.NaN;
            }
        }

        return new(spot, levelIndex, 0.7, grid, margins);
    }

    public static double MarginAt(House house, Spot spot, int levelIndex, Point2 here)
    {
        double rise = (levelIndex - spot.LevelIndex) * 2.6;
        double distance = Math.Max(0.5, double.Hypot(here.DistanceTo(spot.Plan), rise));
        double walls = house.Levels[levelIndex].Walls.Where(w => Crosses(w, spot.Plan, here)).Sum(w => w.Material.LossDb);
        return AtOneMetreDb - (20 * Math.Log10(distance)) - walls - (FloorDb * Math.Abs(levelIndex - spot.LevelIndex));
    }

    public static IReadOnlyList<SeatMark> SeatsOn(House house, Spot spot, int levelIndex) =>
    [
        .. house.Seats.Where(s => s.LevelIndex == levelIndex).Select(s =>
        {
            double margin = MarginAt(house, spot, levelIndex, s.Plan);
            return new SeatMark(s, margin, margin >= s.RequiredDb);
        }),
    ];

    private static bool Crosses(Wall wall, Point2 from, Point2 to)
    {
        Point2 along = wall.End - wall.Start, ray = to - from;
        double determinant = Point2.Cross(along, ray);
        if (determinant == 0)
        {
            return false;
        }

        double onWall = Point2.Cross(from - wall.Start, ray) / determinant;
        double onRay = Point2.Cross(from - wall.Start, along) / determinant;
        bool isThroughOpening = wall.Openings.Any(o =>
            o.Filling is null
            && onWall * wall.LengthMetres >= o.OffsetMetres
            && onWall * wall.LengthMetres <= o.OffsetMetres + o.WidthMetres);
        return onWall is >= 0 and <= 1 && onRay is >= 0 and <= 1 && !isThroughOpening;
    }
}
