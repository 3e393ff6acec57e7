using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>Ways of writing the same wall differently.</summary>
internal static class WallEdits
{
    /// <summary>Drawn from its other end.</summary>
    internal static Wall Reversed(Wall wall) => wall with
    {
        Start = wall.End,
        End = wall.Start,
        Openings = [.. wall.Openings.Reverse().Select(o => o with
        {
            OffsetMetres = wall.LengthMetres - o.OffsetMetres - o.WidthMetres,
        })],
    };

    /// <summary>Cut into two where a share of its length is over; an opening in the way is cut too.</summary>
    internal static Wall[] Cut(Wall wall, double share)
    {
        Point2 at = wall.Start + (share * (wall.End - wall.Start));
        double first = wall.Start.DistanceTo(at);
        return
        [
            wall with { End = at, Openings = Between(wall.Openings, 0, first) },
            wall with { Start = at, Openings = Between(wall.Openings, first, wall.LengthMetres) },
        ];
    }

    /// <summary>The house with one wall of one level written as others.</summary>
    internal static House Replace(House house, int level, int wall, params Wall[] others)
    {
        Level old = house.Levels[level];
        Level changed = old with { Walls = [.. old.Walls.Take(wall), .. others, .. old.Walls.Skip(wall + 1)] };
        return house with { Levels = [.. house.Levels.Take(level), changed, .. house.Levels.Skip(level + 1)] };
    }

    private static Opening[] Between(IEnumerable<Opening> openings, double from, double to) =>
    [
        .. openings
            .Select(o => (Opening: o, Low: Math.Max(o.OffsetMetres, from), High: Math.Min(o.OffsetMetres + o.WidthMetres, to)))
            .Where(o => o.High > o.Low)
            .Select(o => o.Opening with { OffsetMetres = o.Low - from, WidthMetres = o.High - o.Low }),
    ];
}
