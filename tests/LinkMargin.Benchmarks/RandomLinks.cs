using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Benchmarks;

/// <summary>Links between random places of a level, the same each time, no longer than a controller reaches.</summary>
internal static class RandomLinks
{
    private const double LongestMetres = 15;

    /// <summary>Links between any two places.</summary>
    internal static (Point3 From, Point3 To)[] In(House house, int count) =>
        [.. Places(house).Zip(Places(house, seed: 2)).Where(IsShort).Take(count)];

    /// <summary>Places about one place.</summary>
    internal static IEnumerable<Point3> From(House house, Point3 from, int count) =>
        Places(house).Where(place => IsShort((from, place))).Take(count);

    private static bool IsShort((Point3 From, Point3 To) link) => link.From.DistanceTo(link.To) <= LongestMetres;

    private static IEnumerable<Point3> Places(House house, int seed = 1)
    {
        Point2[] corners = [.. house.Levels[0].Rooms.SelectMany(room => room.Outline.Corners)];
        double width = corners.Max(c => c.X), depth = corners.Max(c => c.Y);
        var random = new Random(seed);
        while (true)
        {
            yield return new Point3(width * random.NextDouble(), depth * random.NextDouble(), 0.5 + random.NextDouble());
        }
    }
}
