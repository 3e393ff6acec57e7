using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>Finds the places in a house where a path may be diffracted.</summary>
internal static class DiffractionEdges
{
    private const double ClearMetres = 0.04;

    // With less loss than this more passes than is diffracted, dB.
    private const double LeastDb = 10;

    /// <summary>
    /// The jambs of open openings, the free ends and outer corners of walls, the rims of holes in floors, and the corners of large
    /// fixtures.
    /// </summary>
    internal static DiffractionEdge[] Of(Scene scene)
    {
        House house = scene.House;
        var edges = new List<DiffractionEdge>();
        int group = 0;
        for (int level = 0; level < house.Levels.Count; level++)
        {
            Level here = house.Levels[level];
            foreach (OpenGap gap in scene.Storeys[level].Gaps)
            {
                AddJambs(edges, level, gap, scene.Names[gap.Name], group++);
            }

            AddCorners(edges, level, here, scene.Storeys[level], ref group);
            AddHoles(edges, house, level, ref group);
        }

        AddFixtures(edges, house, scene, ref group);
        return [.. edges];
    }

    private static void AddJambs(List<DiffractionEdge> edges, int level, OpenGap gap, string name, int group)
    {
        double width = gap.Start.DistanceTo(gap.End);
        Point2 clear = (Math.Min(ClearMetres, width / 2) / width) * (gap.End - gap.Start);
        double clearUp = Math.Min(ClearMetres, (gap.High - gap.Low) / 2), low = gap.Low + clearUp, high = gap.High - clearUp;
        foreach ((Point2 at, Point2 near, Point2 far) in new[]
        {
            (gap.Start + clear, gap.Start, gap.End), (gap.End - clear, gap.End, gap.Start),
        })
        {
            edges.Add(new DiffractionEdge(at, low, high, level, level, group, TurnKind.Opening, name) { Jambs = (near, far) });
        }
    }

    private static void AddCorners(List<DiffractionEdge> edges, int level, Level here, Storey storey, ref int group)
    {
        double floor = here.ElevationMetres, ceiling = floor + here.HeightMetres;
        foreach (WallCorner corner in storey.Joints.Select(joint => WallCorner.Of(joint, i => here.Walls[i].Name)).OfType<WallCorner>())
        {
            edges.Add(new DiffractionEdge(
                corner.At + (ClearMetres * corner.Outward),
                floor,
                ceiling,
                level,
                level,
                group++,
                corner.Kind,
                here.Walls[corner.Wall].Name));
        }
    }

    // Round fixtures that hardly anything passes through and that are too large for the diffuse field alone.
    private static void AddFixtures(List<DiffractionEdge> edges, House house, Scene scene, ref int group)
    {
        foreach ((Fixture fixture, FixtureBox box) in house.Fixtures.Zip(scene.Boxes))
        {
            if (!SceneCompiler.IsLarge(fixture) || (fixture.Material.ThroughDb ?? fixture.Material.LossDb) < LeastDb || box.IsBody)
            {
                continue;
            }

            foreach (Point2 corner in box.Corners)
            {
                Point2 outward = (1 / corner.DistanceTo(box.Centre)) * (corner - box.Centre);
                edges.Add(new DiffractionEdge(
                    corner + (ClearMetres * outward),
                    box.VerticalExtent.Low,
                    box.VerticalExtent.High,
                    box.Level,
                    box.Level,
                    group++,
                    TurnKind.FixtureCorner,
                    fixture.Name));
            }
        }
    }

    // At the middle of each side of the hole, halfway between ceiling and floor, a little towards its middle.
    private static void AddHoles(List<DiffractionEdge> edges, House house, int level, ref int group)
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
                edges.Add(new DiffractionEdge(
                    side + (inward * (middle - side)), height, height, level, level + 1, group, TurnKind.StairVoid, here.Name));
            }

            group++;
        }
    }
}
