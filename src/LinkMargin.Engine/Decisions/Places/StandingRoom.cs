using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Places;

/// <summary>Where in a house a console may stand, on a grid.</summary>
public static class StandingRoom
{
    /// <summary>Half a console's width: closer to a wall's centre line none fits. Common practice, 0.3 m across.</summary>
    public const double ClearMetres = 0.15;

    // A zone narrower than a cell gets smaller cells, up to a limit.
    private const int MostHalvings = 5;

    /// <summary>Every place of a request, zones in the house's order, then south to north and west to east.</summary>
    public static IReadOnlyList<Standing> Of(House house, PlaceRequest request) =>
    [
        .. (house.Zones.Count > 0 && !request.Everywhere
            ? house.Zones.Where(zone => IsAsked(zone.LevelIndex, request)).SelectMany(zone => InZone(house, zone, request))
            : Enumerable.Range(0, house.Levels.Count).Where(level => IsAsked(level, request)).SelectMany(level => OnFloor(house, level, request))),
    ];

    /// <summary>Whether there is a floor below a place, and nothing solid and no keep-out at it.</summary>
    public static bool IsFree(House house, int levelIndex, Point2 plan, double heightMetres) =>
        !IsOverVoid(house, levelIndex, plan)
        && !house.KeepOuts.Any(k => k.LevelIndex == levelIndex && k.Contains(plan, heightMetres))
        && !house.Fixtures.Any(f => f.LevelIndex == levelIndex && !f.IsShell && f.Contains(plan, heightMetres));

    /// <summary>Whether a place is above a hole in its level's floor: a stairwell or a gallery, where nobody puts up a shelf.</summary>
    public static bool IsOverVoid(House house, int levelIndex, Point2 plan) =>
        levelIndex > 0 && (house.Levels[levelIndex - 1].Above?.Voids.Any(hole => hole.Contains(plan)) ?? false);

    private static bool IsAsked(int level, PlaceRequest request) => request.LevelIndex is null || request.LevelIndex == level;

    private static IEnumerable<Standing> InZone(House house, Zone zone, PlaceRequest request)
    {
        double cell = request.CellMetres ?? PlaceRequest.ZoneCellMetres;
        Point2[] points = [.. GridOver(zone.Outline, cell)];
        for (int i = 0; points.Length == 0 && i < MostHalvings; i++)
        {
            cell /= 2;
            points = [.. GridOver(zone.Outline, cell)];
        }

        return from height in zone.HeightsMetres
               from point in points
               where IsFree(house, zone.LevelIndex, point, height)
               select new Standing(zone.LevelIndex, point, height, zone.Name);
    }

    private static IEnumerable<Standing> OnFloor(House house, int levelIndex, PlaceRequest request)
    {
        Level level = house.Levels[levelIndex];
        return from room in level.Rooms
               from point in GridOver(room.Outline, request.CellMetres ?? PlaceRequest.FloorCellMetres)
               where room.Outline.DepthOf(point) >= ClearMetres
               from height in request.HeightsMetres
               where height <= level.HeightMetres && IsFree(house, levelIndex, point, height)
               select new Standing(levelIndex, point, height, room.Name);
    }

    // Centred in the outline, so that a narrow shelf has its places along its middle.
    private static IEnumerable<Point2> GridOver(Polygon outline, double cell)
    {
        Point2 least = outline.Least, size = outline.Greatest - least;
        int columns = Math.Max(1, (int)Math.Floor((size.X / cell) + 1e-6)), rows = Math.Max(1, (int)Math.Floor((size.Y / cell) + 1e-6));
        double x0 = least.X + ((size.X - ((columns - 1) * cell)) / 2), y0 = least.Y + ((size.Y - ((rows - 1) * cell)) / 2);
        for (int row = 0; row < rows; row++)
        {
            for (int column = 0; column < columns; column++)
            {
                var point = new Point2(x0 + (column * cell), y0 + (row * cell));
                if (outline.Contains(point))
                {
                    yield return point;
                }
            }
        }
    }
}

/// <summary>A place where a console may stand.</summary>
/// <param name="LevelIndex">The level; 0 is the lowest.</param>
/// <param name="Plan">Where on the plan.</param>
/// <param name="HeightMetres">Above the level's floor, metres.</param>
/// <param name="Where">The zone or the room it is in.</param>
public readonly record struct Standing(int LevelIndex, Point2 Plan, double HeightMetres, string Where);
