using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>A first-order reflection found by imaging.</summary>
/// <param name="Kind">What throws it back.</param>
/// <param name="Name">The wall, the fixture, or of a floor or ceiling its level.</param>
/// <param name="LengthMetres">Length of the path, metres.</param>
/// <param name="IncidenceDegrees">Angle to the mirror's normal.</param>
/// <param name="Place">Where it is thrown back.</param>
/// <param name="Material">What is there; null for air, and for floors, whose layers are one sheet.</param>
/// <param name="ClearMetres">How far inside the surface the place is, metres; below 0 outside, and in a floor with a void.</param>
internal sealed record Image(
    TurnKind Kind, string Name, double LengthMetres, double IncidenceDegrees, Point3 Place, Material? Material, double ClearMetres);

/// <summary>
/// First-order reflections by imaging in every surface of a house as it is written, whatever stands in the way. It uses no
/// scene, index or mirror of the engine.
/// </summary>
internal static class BruteForceImages
{
    /// <summary>The images of one place, for another.</summary>
    internal static IEnumerable<Image> Of(House house, Point3 from, Point3 to)
    {
        for (int i = 0; i < house.Levels.Count; i++)
        {
            Level level = house.Levels[i];
            foreach (Wall wall in level.Walls)
            {
                double low = level.ElevationMetres + wall.BaseMetres, high = level.ElevationMetres + wall.TopMetres;
                if (InUpright(wall.Start, wall.End, low, high, from, to) is Image image)
                {
                    yield return image with
                    {
                        Kind = TurnKind.Wall,
                        Name = wall.Name,
                        Material = BruteForceLine.At(house, i, wall, image.Place.Plan, image.Place.Z)?.Material,
                        ClearMetres = Math.Min(image.ClearMetres, ToOpenings(wall, level, image.Place)),
                    };
                }
            }

            foreach ((double height, TurnKind kind) in new[] { (level.ElevationMetres, TurnKind.Floor), (level.CeilingMetres, TurnKind.Ceiling) })
            {
                if (InLevel(height, kind, from, to) is Image image)
                {
                    bool hasVoids = (kind == TurnKind.Floor ? i > 0 ? house.Levels[i - 1].Above : null : level.Above)?.Voids.Count > 0;
                    yield return image with { Name = level.Name, ClearMetres = hasVoids ? double.NegativeInfinity : double.PositiveInfinity };
                }
            }
        }

        foreach (Fixture fixture in house.Fixtures)
        {
            double floor = house.Levels[fixture.LevelIndex].ElevationMetres;
            Point2[] corners = BruteForceLine.Corners(fixture);
            BoxSides[] sides = [BoxSides.South, BoxSides.East, BoxSides.North, BoxSides.West];
            for (int i = 0; i < sides.Length; i++)
            {
                // Corners run anticlockwise: what is to the right of a side is outside. In a solid thing nothing is reflected.
                if (!fixture.IsShell && Point2.Cross(corners[(i + 1) % 4] - corners[i], from.Plan - corners[i]) > 0)
                {
                    continue;
                }

                if (InUpright(corners[i], corners[(i + 1) % 4], floor + fixture.FromMetres, floor + fixture.ToMetres, from, to) is Image image)
                {
                    yield return image with
                    {
                        Kind = TurnKind.Fixture,
                        Name = fixture.Name,
                        Material = (fixture.OpenSides & sides[i]) != 0 ? null : fixture.Material,
                    };
                }
            }
        }
    }

    private static Image? InUpright(Point2 start, Point2 end, double low, double high, Point3 from, Point3 to)
    {
        double length = start.DistanceTo(end);
        Point2 along = (1 / length) * (end - start);
        double before = Point2.Cross(along, from.Plan - start), after = Point2.Cross(along, to.Plan - start);
        if (before * after <= 0)
        {
            return null;
        }

        // The image of the start, and where its line to the end meets the plane.
        var normal = new Point2(-along.Y, along.X);
        Point3 image = (from.Plan - (2 * before * normal)).At(from.Z);
        Point3 place = Between(image, to, before / (before + after));
        double run = Dot(place.Plan - start, along), whole = image.DistanceTo(to);
        double clear = Math.Min(Math.Min(run, length - run), Math.Min(place.Z - low, high - place.Z));
        return new Image(TurnKind.Wall, "", whole, Degrees(Math.Abs(before + after) / whole), place, null, clear);
    }

    private static Image? InLevel(double height, TurnKind kind, Point3 from, Point3 to)
    {
        double sign = kind == TurnKind.Floor ? 1 : -1, before = sign * (from.Z - height), after = sign * (to.Z - height);
        if (before <= 0 || after <= 0)
        {
            return null;
        }

        Point3 image = from.Plan.At((2 * height) - from.Z);
        double whole = image.DistanceTo(to);
        Point3 place = Between(image, to, before / (before + after));
        return new Image(kind, "", whole, Degrees((before + after) / whole), place, null, double.PositiveInfinity);
    }

    // From a place on a wall to the nearest edge of an opening in it, metres.
    private static double ToOpenings(Wall wall, Level level, Point3 place)
    {
        double along = wall.Start.DistanceTo(place.Plan), height = place.Z - level.ElevationMetres, nearest = double.PositiveInfinity;
        foreach (Opening opening in wall.Openings)
        {
            double besides = Math.Max(opening.OffsetMetres - along, along - opening.OffsetMetres - opening.WidthMetres);
            double over = Math.Max(opening.SillMetres - height, height - opening.SillMetres - opening.HeightMetres);
            nearest = Math.Min(nearest, Math.Abs(Math.Max(besides, over)));
        }

        return nearest;
    }

    private static Point3 Between(Point3 one, Point3 other, double share) => new(
        one.X + (share * (other.X - one.X)), one.Y + (share * (other.Y - one.Y)), one.Z + (share * (other.Z - one.Z)));

    private static double Dot(Point2 one, Point2 other) => (one.X * other.X) + (one.Y * other.Y);

    private static double Degrees(double cosine) => double.RadiansToDegrees(Math.Acos(Math.Min(1, cosine)));
}
