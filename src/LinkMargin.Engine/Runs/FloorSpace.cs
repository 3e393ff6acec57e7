using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Runs;

/// <summary>
/// The space between the joists of a floor. Along a joist a cable lies free; each joist that it crosses takes a hole. It leads nowhere
/// across a void, nor past the rooms below and above it.
/// </summary>
internal sealed class FloorSpace
{
    // How closely a way is looked at, metres; at most so many steps across a house.
    private const double StepMetres = 0.1;
    private const int MostSteps = 1000;

    // A way may run as close to a void's edge or past a room's outline, metres.
    private const double EdgeMetres = 0.1;

    private readonly House house;
    private readonly int level;
    private readonly JoistLayout joists;
    private readonly Point2 along;
    private readonly Point2 least;
    private readonly double stepMetres;
    private readonly bool[,] isInside;

    private FloorSpace(House house, int level, JoistLayout joists, double depthMetres)
    {
        (this.house, this.level, this.joists) = (house, level, joists);
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(joists.RunDegrees));
        along = new(cos, sin);
        JoistDepthMetres = depthMetres;
        HeightMetres = (house.Levels[level].CeilingMetres + house.Levels[level + 1].ElevationMetres) / 2;
        Polygon[] rooms = [.. house.Levels[level].Rooms.Concat(house.Levels[level + 1].Rooms).Select(room => room.Outline)];
        least = new(rooms.Select(room => room.Least.X).DefaultIfEmpty(0).Min(), rooms.Select(room => room.Least.Y).DefaultIfEmpty(0).Min());
        Point2 size = new Point2(rooms.Select(room => room.Greatest.X).DefaultIfEmpty(0).Max(), rooms.Select(room => room.Greatest.Y).DefaultIfEmpty(0).Max()) - least;
        stepMetres = Math.Max(StepMetres, Math.Max(size.X, size.Y) / MostSteps);
        isInside = new bool[(int)(size.X / stepMetres) + 2, (int)(size.Y / stepMetres) + 2];
        for (int i = 0; i < isInside.GetLength(0); i++)
        {
            for (int j = 0; j < isInside.GetLength(1); j++)
            {
                isInside[i, j] = IsInside(least + (stepMetres * new Point2(i, j)));
            }
        }
    }

    /// <summary>Depth of a joist, metres.</summary>
    internal double JoistDepthMetres { get; }

    /// <summary>Its middle over the lowest floor, metres.</summary>
    internal double HeightMetres { get; }

    /// <summary>The space above a level; null where there is none to speak of.</summary>
    internal static FloorSpace? Of(House house, int level)
    {
        if (level + 1 >= house.Levels.Count || house.Levels[level].Above is not { Joists: { } joists } above)
        {
            return null;
        }

        double depth = above.BuildUp.Layers.Select(layer => layer.Joists?.DepthMetres ?? 0).DefaultIfEmpty(0).Max();
        return depth > 0 ? new FloorSpace(house, level, joists, depth) : null;
    }

    /// <summary>Whether a place is in it.</summary>
    internal bool IsInside(Point2 at) =>
        !house.Levels[level].Above!.Voids.Any(hole => hole.DepthOf(at) > EdgeMetres)
        && (IsUnder(house.Levels[level], at) || IsUnder(house.Levels[level + 1], at));

    /// <summary>The shortest way between two places of it: along the joists, then across them, or the other way round; null if both are barred.</summary>
    internal RouteLeg? Leg(Point3 from, Point3 to)
    {
        Point2 way = to.Plan - from.Plan;
        double run = Point2.Dot(way, along), across = Point2.Cross(along, way);
        foreach (Point2 corner in new[] { from.Plan + (run * along), to.Plan - (run * along) })
        {
            if (IsClear(from.Plan, corner) && IsClear(corner, to.Plan))
            {
                bool isStraight = Math.Min(Math.Abs(run), Math.Abs(across)) <= GeometryTolerances.SlackMetres;
                return new RouteLeg(LegKind.InFloor, house.Levels[level].Name, from, to, Math.Abs(run) + Math.Abs(across), Crossed(from.Plan, to.Plan))
                {
                    Corner = isStraight ? null : corner.At(HeightMetres),
                };
            }
        }

        return null;
    }

    /// <summary>
    /// How many joists stand between two places: counted where one joist's place is known, otherwise as many as the distance is spacings,
    /// rounded; there may be one more.
    /// </summary>
    internal int Crossed(Point2 from, Point2 to)
    {
        double one = Point2.Cross(along, from) / joists.SpacingMetres, other = Point2.Cross(along, to) / joists.SpacingMetres;
        (one, other) = (Math.Min(one, other), Math.Max(one, other));
        if (joists.FirstOffsetMetres is not { } first)
        {
            return (int)Math.Round(other - one, MidpointRounding.AwayFromZero);
        }

        double at = first / joists.SpacingMetres;
        return Math.Max(0, (int)(Math.Ceiling(other - at - GeometryTolerances.SlackMetres) - Math.Floor(one - at + GeometryTolerances.SlackMetres) - 1));
    }

    private bool IsClear(Point2 from, Point2 to)
    {
        int steps = (int)Math.Ceiling(from.DistanceTo(to) / stepMetres);
        for (int i = 0; i <= steps; i++)
        {
            Point2 at = from + (i / (double)Math.Max(1, steps) * (to - from)) - least;
            int x = (int)Math.Round(at.X / stepMetres), y = (int)Math.Round(at.Y / stepMetres);
            if (x < 0 || y < 0 || x >= isInside.GetLength(0) || y >= isInside.GetLength(1) || !isInside[x, y])
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsUnder(Level level, Point2 at) => level.Rooms.Any(room => room.Outline.DepthOf(at) >= -EdgeMetres);
}
