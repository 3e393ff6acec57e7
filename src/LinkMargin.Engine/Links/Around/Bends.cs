using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Links.Around;

/// <summary>Finds the places in a house where a path may bend.</summary>
internal static class Bends
{
    private const double ClearMetres = 0.04;
    private const double SameMetres = 0.01;

    /// <summary>The jambs of open openings, the free ends of walls, and the rims of holes in floors.</summary>
    internal static Bend[] Of(House house)
    {
        var bends = new List<Bend>();
        int group = 0;
        for (int level = 0; level < house.Levels.Count; level++)
        {
            Level here = house.Levels[level];
            foreach (Gap gap in Gap.Of(here))
            {
                AddJambs(bends, level, here, gap, group++);
            }

            AddFreeEnds(bends, level, here, ref group);
            AddHoles(bends, house, level, ref group);
        }

        return [.. bends];
    }

    private static void AddJambs(List<Bend> bends, int level, Level here, Gap gap, int group)
    {
        double low = here.ElevationMetres + gap.SillMetres, high = here.ElevationMetres + gap.HeadMetres;
        double width = gap.Start.DistanceTo(gap.End);
        Point2 clear = (Math.Min(ClearMetres, width / 2) / width) * (gap.End - gap.Start);
        foreach (Point2 at in new[] { gap.Start + clear, gap.End - clear })
        {
            bends.Add(new Bend(at, low, high, level, level, group, TurnKind.Opening, gap.Name));
        }
    }

    private static void AddFreeEnds(List<Bend> bends, int level, Level here, ref int group)
    {
        foreach (Wall wall in here.Walls.Where(w => w.LengthMetres > 0))
        {
            Point2 along = (1 / wall.LengthMetres) * (wall.End - wall.Start);
            foreach ((Point2 end, Point2 outward) in new[] { (wall.Start, -1 * along), (wall.End, along) })
            {
                bool isFree = !here.Walls.Any(other => other != wall && Touches(other, end));
                if (isFree)
                {
                    double floor = here.ElevationMetres;
                    bends.Add(new Bend(
                        end + (ClearMetres * outward), floor, floor + here.HeightMetres, level, level, group++, TurnKind.WallEnd, wall.Name));
                }
            }
        }
    }

    private static bool Touches(Wall wall, Point2 at)
    {
        Point2 along = wall.End - wall.Start;
        double squared = Point2.Dot(along, along);
        double share = squared > 0 ? Math.Clamp(Point2.Dot(at - wall.Start, along) / squared, 0, 1) : 0;
        return at.DistanceTo(wall.Start + (share * along)) <= SameMetres;
    }

    // At the middle of each side of the hole, halfway between ceiling and floor, a little towards its middle.
    private static void AddHoles(List<Bend> bends, House house, int level, ref int group)
    {
        Level here = house.Levels[level];
        if (here.Above is null || level + 1 >= house.Levels.Count)
        {
            return;
        }

        double height = (here.CeilingMetres + house.Levels[level + 1].ElevationMetres) / 2;
        foreach (Polygon hole in here.Above.Voids)
        {
            IReadOnlyList<Point2> corners = hole.Corners;
            Point2 middle = new(corners.Average(c => c.X), corners.Average(c => c.Y));
            for (int i = 0; i < corners.Count; i++)
            {
                Point2 side = 0.5 * (corners[i] + corners[(i + 1) % corners.Count]);
                double inward = ClearMetres / Math.Max(ClearMetres, side.DistanceTo(middle));
                bends.Add(new Bend(
                    side + (inward * (middle - side)), height, height, level, level + 1, group, TurnKind.StairVoid, here.Name));
            }

            group++;
        }
    }
}
