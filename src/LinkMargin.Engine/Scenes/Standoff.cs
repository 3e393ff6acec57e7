using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// Keeps the ends of links off surfaces: a hand, a controller and a console's case keep its antenna some centimetres from everything. An end
/// closer to a wall, a floor, a ceiling or a side of a fixture is computed where it would stand off it, and in the middle of a gap that is
/// too narrow for that.
/// </summary>
internal sealed class Standoff
{
    /// <summary>How far an antenna keeps from a surface, metres.</summary>
    internal const double Metres = 0.02;

    // In the corner of a room with its floor there are three surfaces.
    private const int MostSurfaces = 3;

    private readonly Face[] faces;
    private readonly Plate[] plates;
    private readonly PlanTree tree;

    internal Standoff(Scene scene)
    {
        faces = Face.Of(scene);
        tree = new PlanTree([.. faces.Select(face => face.Bounds)]);
        plates = [.. scene.House.Levels.SelectMany((level, i) => new[]
        {
            new Plate(level.ElevationMetres, true, i > 0 ? VoidsOver(scene.House.Levels[i - 1]) : []),
            new Plate(level.CeilingMetres, false, VoidsOver(level)),
        })];
    }

    /// <summary>Where an end is computed.</summary>
    /// <param name="place">Where it is.</param>
    /// <param name="candidates">The thread's own; grown when too small.</param>
    internal Point3 Of(Point3 place, ref int[] candidates)
    {
        int count = tree.Query(place.Plan, place.Plan, ref candidates, (MostSurfaces + 2) * Metres);
        for (int i = 0; i < MostSurfaces; i++)
        {
            Push push = Nearest(place, candidates.AsSpan(0, count));
            if (push.Metres <= GeometryTolerances.SlackMetres)
            {
                break;
            }

            place += push.Metres * push.Direction;
        }

        return place;
    }

    // Off the nearest surface that is too close.
    private Push Nearest(Point3 place, ReadOnlySpan<int> near)
    {
        double least = Metres;
        var nearest = default(Push);

        // Plates first: what is on a floor and on the underside of a solid that stands there belongs to what is above the floor.
        foreach (Plate plate in plates)
        {
            Consider(plate.DistanceTo(place, out Point3 direction), direction, near);
        }

        foreach (int i in near)
        {
            Consider(faces[i].DistanceTo(place, out Point3 direction), direction, near);
        }

        return nearest;

        void Consider(double distance, Point3 direction, ReadOnlySpan<int> among)
        {
            if (distance < least && direction != default
                && Math.Min(Metres, Gap(place - (distance * direction), direction, distance, among) / 2) - distance is > GeometryTolerances.SlackMetres and double metres)
            {
                (least, nearest) = (distance, new Push(direction, metres));
            }
        }
    }

    // How far the next surface is from a place on one, past another place.
    private double Gap(Point3 from, Point3 direction, double past, ReadOnlySpan<int> near)
    {
        double least = double.PositiveInfinity;
        foreach (int i in near)
        {
            double metres = faces[i].MetAt(from, direction);
            least = metres > past + Face.OnMetres ? Math.Min(least, metres) : least;
        }

        foreach (Plate plate in plates)
        {
            double metres = plate.MetAt(from, direction);
            least = metres > past + Face.OnMetres ? Math.Min(least, metres) : least;
        }

        return least;
    }

    private static Polygon[] VoidsOver(Level level) => [.. level.Above?.Voids ?? []];

    private readonly record struct Push(Point3 Direction, double Metres);

    // A floor or a ceiling extends as far as the plan.
    private readonly record struct Plate(double Height, bool FacesUp, Polygon[] Voids)
    {
        internal double DistanceTo(Point3 place, out Point3 direction)
        {
            double above = place.Z - Height, distance = Math.Abs(above);
            bool isOn = distance <= Face.OnMetres;
            direction = new Point3(0, 0, (isOn ? FacesUp : above > 0) ? 1 : -1);
            return distance >= Metres || IsOpenAt(place.Plan) ? double.PositiveInfinity : isOn ? 0 : distance;
        }

        internal double MetAt(Point3 from, Point3 direction)
        {
            double metres = (Height - from.Z) / direction.Z;
            return Math.Abs(direction.Z) > GeometryTolerances.ParallelSine && metres is > 0 and < 2 * Metres && !IsOpenAt((from + (metres * direction)).Plan)
                ? metres
                : double.PositiveInfinity;
        }

        // On the edge of a hole there is still a floor, as for a line through there.
        private bool IsOpenAt(Point2 at) => Array.Exists(Voids, hole => hole.DepthOf(at) > GeometryTolerances.SlackMetres);
    }
}
