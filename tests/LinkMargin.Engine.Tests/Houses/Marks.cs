using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>The points of a house where something begins or ends, and a tracer may decide wrongly.</summary>
internal static class Marks
{
    internal static IEnumerable<Point3> Of(House house) =>
    [
        .. house.Levels.SelectMany(level => level.Walls.SelectMany(wall => OfWall(wall, level))),
        .. house.Levels.SkipLast(1).SelectMany((level, i) => OfVoids(level, house.Levels[i + 1].ElevationMetres)),
        .. house.Fixtures.SelectMany(fixture => OfFixture(fixture, house.Levels[fixture.LevelIndex].ElevationMetres)),
        .. house.Spots.Select(house.PositionOf),
        .. house.Seats.Select(house.PositionOf),
    ];

    /// <summary>Ends, jambs and middles, each at the bottom, half way up, at the top, at sills and at heads.</summary>
    internal static IEnumerable<Point3> OfWall(Wall wall, Level level)
    {
        double[] along =
        [
            0, 0.5, 1,
            .. wall.Openings.SelectMany(o => new[] { o.OffsetMetres, o.OffsetMetres + o.WidthMetres })
                .Select(metres => metres / wall.LengthMetres),
        ];
        double[] heights =
        [
            wall.BaseMetres, wall.TopMetres, (wall.BaseMetres + wall.TopMetres) / 2,
            .. wall.Openings.SelectMany(o => new[] { o.SillMetres, o.SillMetres + o.HeightMetres }),
        ];
        return along.SelectMany(_ => heights, (share, height) =>
            (wall.Start + (share * (wall.End - wall.Start))).At(level.ElevationMetres + height));
    }

    // Corners and middles of edges, at the middle of each layer where its sheet is.
    private static IEnumerable<Point3> OfVoids(Level level, double floorAboveMetres)
    {
        if (level.Above is not FloorAbove above)
        {
            yield break;
        }

        double stretch = (floorAboveMetres - level.CeilingMetres) / above.BuildUp.ThicknessMetres;
        double depth = 0;
        foreach (FloorLayer layer in above.BuildUp.Layers)
        {
            double z = floorAboveMetres - (stretch * (depth + (layer.ThicknessMetres / 2)));
            depth += layer.ThicknessMetres;
            foreach (Polygon hole in above.Voids)
            {
                for (int i = 0; i < hole.Corners.Count; i++)
                {
                    Point2 corner = hole.Corners[i], next = hole.Corners[(i + 1) % hole.Corners.Count];
                    yield return corner.At(z);
                    yield return (0.5 * (corner + next)).At(z);
                }
            }
        }
    }

    // Corners, middles of edges and middles of faces: every step of −1, 0 and 1 half sizes from the heart.
    private static IEnumerable<Point3> OfFixture(Fixture fixture, double floorMetres)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(fixture.TurnDegrees));
        double middle = floorMetres + ((fixture.FromMetres + fixture.ToMetres) / 2);
        double half = (fixture.ToMetres - fixture.FromMetres) / 2;
        foreach (int i in new[] { -1, 0, 1 })
        {
            foreach (int j in new[] { -1, 0, 1 })
            {
                double x = i * fixture.SizeX / 2, y = j * fixture.SizeY / 2;
                Point2 plan = fixture.Centre + new Point2((x * cos) - (y * sin), (x * sin) + (y * cos));
                yield return plan.At(middle - half);
                yield return plan.At(middle);
                yield return plan.At(middle + half);
            }
        }
    }
}
