using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using NetTopologySuite.Algorithm;
using NetTopologySuite.Geometries;
using Point3 = LinkMargin.Engine.Geometry.Point3;
using Polygon = NetTopologySuite.Geometries.Polygon;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>
/// What a straight line meets, by trying every wall, floor and fixture of a house with a general-purpose geometry library. It
/// reads the house as it is written and uses no scene, index or ray of the engine.
/// </summary>
internal static class BruteForceLine
{
    private static readonly GeometryFactory Factory = new();

    /// <summary>All crossings, nearest first.</summary>
    internal static IReadOnlyList<Crossing> Crossings(House house, Point3 from, Point3 to)
    {
        var met = new List<Crossing>();
        for (int i = 0; i < house.Levels.Count; i++)
        {
            foreach (Wall wall in house.Levels[i].Walls)
            {
                AddWall(met, house, i, wall, from, to);
            }

            AddFloor(met, house, i, from, to);
        }

        foreach (Fixture fixture in house.Fixtures)
        {
            AddFixture(met, house, fixture, from, to);
        }

        return [.. met.OrderBy(crossing => crossing.DistanceMetres)];
    }

    /// <summary>What stands at a place of a wall: its own material, what fills an opening, or null for air.</summary>
    internal static (ObstacleKind Kind, string Name, Material Material)? At(House house, int level, Wall wall, Point2 plan, double z)
    {
        Level storey = house.Levels[level];
        double along = wall.Start.DistanceTo(plan), height = z - storey.ElevationMetres;

        // A wall up to the ceiling goes on to the floor above.
        bool isFull = wall.TopMetres >= storey.HeightMetres - 0.001 && level + 1 < house.Levels.Count;
        double top = isFull ? house.Levels[level + 1].ElevationMetres - storey.ElevationMetres : wall.TopMetres;
        if (height < wall.BaseMetres || height > top)
        {
            return null;
        }

        foreach (Opening opening in wall.Openings)
        {
            if (along > opening.OffsetMetres && along < opening.OffsetMetres + opening.WidthMetres
                && height > opening.SillMetres && height < opening.SillMetres + opening.HeightMetres)
            {
                return opening.Leaf is null || opening.IsOpen ? null : (ObstacleKind.Opening, opening.Name, opening.Leaf);
            }
        }

        return (ObstacleKind.Wall, wall.Name, wall.Material);
    }

    private static void AddWall(List<Crossing> met, House house, int level, Wall wall, Point3 from, Point3 to)
    {
        var lines = new RobustLineIntersector();
        lines.ComputeIntersection(At(from.Plan), At(to.Plan), At(wall.Start), At(wall.End));
        if (!lines.HasIntersection)
        {
            return;
        }

        Coordinate place = lines.GetIntersection(0);
        double share = place.Distance(At(from.Plan)) / from.Plan.DistanceTo(to.Plan), z = from.Z + (share * (to.Z - from.Z));
        if (At(house, level, wall, new Point2(place.X, place.Y), z) is not (ObstacleKind kind, string name, Material material))
        {
            return;
        }

        double slope = new LineSegment(At(wall.Start), At(wall.End)).Angle - new LineSegment(At(from.Plan), At(to.Plan)).Angle;
        double cosine = Math.Abs(Math.Sin(slope)) * from.Plan.DistanceTo(to.Plan) / from.DistanceTo(to);
        met.Add(new Crossing(kind, name, material, level, Degrees(cosine), 1, share * from.DistanceTo(to)));
    }

    private static void AddFloor(List<Crossing> met, House house, int level, Point3 from, Point3 to)
    {
        if (house.Levels[level].Above is not FloorAbove above)
        {
            return;
        }

        double face = house.Levels[level + 1].ElevationMetres;
        foreach (FloorLayer layer in above.BuildUp.Layers)
        {
            double z = face - (layer.ThicknessMetres / 2);
            face -= layer.ThicknessMetres;
            double share = (z - from.Z) / (to.Z - from.Z);
            Point2 at = from.Plan + (share * (to.Plan - from.Plan));
            if (layer.Material is Material material && share is > 0 and < 1
                && !above.Voids.Any(hole => Outline(hole.Corners).Contains(Factory.CreatePoint(At(at)))))
            {
                met.Add(new Crossing(
                    ObstacleKind.FloorLayer,
                    above.BuildUp.Name,
                    material,
                    level,
                    Degrees(Math.Abs(to.Z - from.Z) / from.DistanceTo(to)),
                    1,
                    share * from.DistanceTo(to)));
            }
        }
    }

    private static void AddFixture(List<Crossing> met, House house, Fixture fixture, Point3 from, Point3 to)
    {
        double floor = house.Levels[fixture.LevelIndex].ElevationMetres, length = from.DistanceTo(to), plan = from.Plan.DistanceTo(to.Plan);
        Point2[] corners = Corners(fixture);
        NetTopologySuite.Geometries.Geometry inside = Outline(corners).Intersection(Factory.CreateLineString([At(from.Plan), At(to.Plan)]));
        if (inside.IsEmpty || inside.Length == 0)
        {
            return;
        }

        // Shares of the line between its footprint's sides, and between its underside and its top.
        double[] flat = [.. inside.Coordinates.Select(c => c.Distance(At(from.Plan)) / plan).Order()];
        double toLow = (floor + fixture.FromMetres - from.Z) / (to.Z - from.Z), toHigh = (floor + fixture.ToMetres - from.Z) / (to.Z - from.Z);
        double enter = Math.Max(flat[0], Math.Min(toLow, toHigh)), leave = Math.Min(flat[^1], Math.Max(toLow, toHigh));
        enter = Math.Max(enter, 0);
        leave = Math.Min(leave, 1);
        if (enter >= leave)
        {
            return;
        }

        if (!fixture.IsShell)
        {
            double share = fixture.Material.Form == LossForm.Bulk ? (leave - enter) * length / fixture.Material.ThicknessMetres!.Value : 1;
            Add(enter > 0 ? enter : leave, share);
            return;
        }

        if (enter > 0 && (fixture.OpenSides & SideAt(enter).Side) == 0)
        {
            Add(enter, 1);
        }

        if (leave < 1 && (fixture.OpenSides & SideAt(leave).Side) == 0)
        {
            Add(leave, 1);
        }

        void Add(double at, double share) => met.Add(new Crossing(
            ObstacleKind.Fixture, fixture.Name, fixture.Material, fixture.LevelIndex, Degrees(SideAt(at).Cosine), share, at * length));

        (BoxSides Side, double Cosine) SideAt(double at)
        {
            if (at == toLow || at == toHigh)
            {
                return (at == toLow ? BoxSides.Bottom : BoxSides.Top, Math.Abs(to.Z - from.Z) / length);
            }

            BoxSides[] sides = [BoxSides.South, BoxSides.East, BoxSides.North, BoxSides.West];
            Coordinate place = At(from.Plan + (at * (to.Plan - from.Plan)));
            LineSegment[] edges = [.. Enumerable.Range(0, 4).Select(i => new LineSegment(At(corners[i]), At(corners[(i + 1) % 4])))];
            int side = Enumerable.Range(0, 4).MinBy(i => edges[i].Distance(place));
            double turn = edges[side].Angle - new LineSegment(At(from.Plan), At(to.Plan)).Angle;
            return (sides[side], Math.Abs(Math.Sin(turn)) * plan / length);
        }
    }

    /// <summary>Corners of a fixture's footprint: south-west, south-east, north-east, north-west before it is turned.</summary>
    internal static Point2[] Corners(Fixture fixture)
    {
        double turn = double.DegreesToRadians(fixture.TurnDegrees);
        var east = new Point2(Math.Cos(turn), Math.Sin(turn));
        var north = new Point2(-east.Y, east.X);
        double x = fixture.SizeX / 2, y = fixture.SizeY / 2;
        return
        [
            fixture.Centre - (x * east) - (y * north),
            fixture.Centre + (x * east) - (y * north),
            fixture.Centre + (x * east) + (y * north),
            fixture.Centre - (x * east) + (y * north),
        ];
    }

    private static Polygon Outline(IReadOnlyList<Point2> corners) =>
        Factory.CreatePolygon([.. corners.Append(corners[0]).Select(At)]);

    private static Coordinate At(Point2 point) => new(point.X, point.Y);

    private static double Degrees(double cosine) => double.RadiansToDegrees(Math.Acos(Math.Min(1, cosine)));
}
