using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>
/// Counts rays in rooms made of rectangles, to judge the diffuse field by: each ray carries its power on straight flights, passes a
/// surface with one chance, is scattered by it evenly over the half space (Lambert) with another, and is otherwise gone. It knows
/// nothing of the power balance: no even field, no exchange areas, no means.
/// </summary>
internal sealed class RayCount(IReadOnlyList<RayCount.Surface> surfaces, Func<Point3, double> absorptionPerMetre)
{
    private const int MostFlights = 2000;

    /// <summary>A rectangle: a corner and its two sides; the chances to pass and to be scattered.</summary>
    internal sealed record Surface(Point3 Corner, Point3 Along, Point3 Up, double Passes, double Scatters);

    /// <summary>
    /// Scalar power density inside a small ball for each watt sent out, by the length of all flights in it, per square metre; only
    /// of what has been scattered so often.
    /// </summary>
    internal double Density(Point3 from, Point3 ball, double radius, int rays, int leastScattered, int seed)
    {
        var random = new Random(seed);
        double length = 0;
        for (int ray = 0; ray < rays; ray++)
        {
            Point3 at = from, direction = Anywhere(random);
            int scattered = 0;
            for (int flight = 0; flight < MostFlights; flight++)
            {
                Surface? struck = Next(at, direction, out double metres);
                double gone = absorptionPerMetre(Onwards(at, direction, Math.Min(metres, 1e3) / 2));
                double free = gone > 0 ? -Math.Log(1 - random.NextDouble()) / gone : double.PositiveInfinity;
                double flown = Math.Min(metres, free);
                if (scattered >= leastScattered)
                {
                    length += Chord(at, direction, flown, ball, radius);
                }

                if (struck is null || free < metres)
                {
                    break;
                }

                at = Onwards(at, direction, metres);
                double chance = random.NextDouble();
                if (chance < struck.Passes)
                {
                    at = Onwards(at, direction, 1e-6);
                    continue;
                }

                if (chance > struck.Passes + struck.Scatters)
                {
                    break;
                }

                direction = FromSurface(struck, direction, random);
                at = Onwards(at, direction, 1e-6);
                scattered++;
            }
        }

        return length / rays / (4.0 / 3 * Math.PI * radius * radius * radius);
    }

    /// <summary>The six faces of a box.</summary>
    internal static IEnumerable<Surface> Box(Point3 low, Point3 high, Func<int, (double Passes, double Scatters)> ofFace)
    {
        Point3 x = new(high.X - low.X, 0, 0), y = new(0, high.Y - low.Y, 0), z = new(0, 0, high.Z - low.Z);
        (Point3 Corner, Point3 Along, Point3 Up)[] faces =
        [
            (low, x, z), (new(high.X, low.Y, low.Z), y, z), (new(low.X, high.Y, low.Z), x, z), (low, y, z), (low, x, y), (new(low.X, low.Y, high.Z), x, y),
        ];
        return faces.Select((face, i) => new Surface(face.Corner, face.Along, face.Up, ofFace(i).Passes, ofFace(i).Scatters));
    }

    private Surface? Next(Point3 at, Point3 direction, out double metres)
    {
        Surface? nearest = null;
        metres = double.PositiveInfinity;
        foreach (Surface surface in surfaces)
        {
            Point3 normal = surface.Along.Cross(surface.Up), to = surface.Corner - at;
            double towards = normal.Dot(direction);
            double t = normal.Dot(to) / towards;
            if (!(t > 1e-9 && t < metres))
            {
                continue;
            }

            Point3 on = Onwards(at, direction, t) - surface.Corner;
            double u = on.Dot(surface.Along) / surface.Along.Dot(surface.Along), v = on.Dot(surface.Up) / surface.Up.Dot(surface.Up);
            if (u >= 0 && u <= 1 && v >= 0 && v <= 1)
            {
                (nearest, metres) = (surface, t);
            }
        }

        return nearest;
    }

    private static double Chord(Point3 at, Point3 direction, double metres, Point3 ball, double radius)
    {
        Point3 to = ball - at;
        double middle = to.Dot(direction), aside = to.Dot(to) - (middle * middle);
        if (aside >= radius * radius)
        {
            return 0;
        }

        double half = Math.Sqrt((radius * radius) - aside);
        return Math.Max(0, Math.Min(middle + half, metres) - Math.Max(middle - half, 0));
    }

    private static Point3 Anywhere(Random random)
    {
        double z = (2 * random.NextDouble()) - 1, turn = 2 * Math.PI * random.NextDouble(), plan = Math.Sqrt(1 - (z * z));
        return new(plan * Math.Cos(turn), plan * Math.Sin(turn), z);
    }

    // Evenly over the half space in solid angle times cosine, on the side the ray came from.
    private static Point3 FromSurface(Surface surface, Point3 direction, Random random)
    {
        Point3 normal = surface.Along.Cross(surface.Up).Unit, along = surface.Along.Unit, up = surface.Up.Unit;
        double side = normal.Dot(direction) > 0 ? -1 : 1, cos = Math.Sqrt(random.NextDouble()), turn = 2 * Math.PI * random.NextDouble();
        double sin = Math.Sqrt(1 - (cos * cos)), a = sin * Math.Cos(turn), b = sin * Math.Sin(turn), c = side * cos;
        return new((a * along.X) + (b * up.X) + (c * normal.X), (a * along.Y) + (b * up.Y) + (c * normal.Y), (a * along.Z) + (b * up.Z) + (c * normal.Z));
    }

    private static Point3 Onwards(Point3 at, Point3 direction, double metres) =>
        new(at.X + (metres * direction.X), at.Y + (metres * direction.Y), at.Z + (metres * direction.Z));
}
