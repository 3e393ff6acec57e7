using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Runs;

/// <summary>
/// The space between the joists of a floor. Along a joist a cable needs no hole; each joist that it crosses needs one. A cable cannot
/// cross a void or leave the outline of the rooms below and above.
/// <para>
/// Places in it are given along and across the joists. A raster in these directions holds how far the space reaches to the left of each
/// place and below it, so one lookup tells whether a straight leg is clear.
/// </para>
/// </summary>
internal sealed class FloorSpace
{
    // Step of the raster, metres; at most this many steps from end to end.
    private const double StepMetres = 0.1;
    private const int MostSteps = 1000;

    // A route may run this far past a void's edge or a room's outline, metres.
    private const double EdgeMetres = 0.1;

    // A turn lies this far from the centre of its raster square, in steps.
    private const double WithinSteps = 0.5 - 1e-5;

    // A hole from below or above exactly at a joist is made this far beside its centre line, metres: half a joist's width.
    private const double BesideJoistMetres = 0.025;

    private static readonly (int X, int Y)[] Diagonals = [(-1, -1), (-1, 1), (1, -1), (1, 1)];

    private readonly string name;
    private readonly PlanFrame frame;
    private readonly double spacingMetres;
    private readonly double firstMetres;
    private readonly Point2 least;
    private readonly double stepMetres;
    private readonly ushort[,] clearAlong; // how many squares in a row are inside, up to and including this one
    private readonly ushort[,] clearAcross;

    private FloorSpace(House house, int level, JoistLayout joists, double depthMetres)
    {
        name = house.Levels[level].Name;
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(joists.RunDegrees));
        frame = new(cos, sin);
        spacingMetres = joists.SpacingMetres;
        JoistDepthMetres = depthMetres;
        HeightMetres = (house.Levels[level].CeilingMetres + house.Levels[level + 1].ElevationMetres) / 2;
        Polygon[] rooms = [.. house.Levels[level].Rooms.Concat(house.Levels[level + 1].Rooms).Select(room => room.Outline)];
        Point2[] corners = [.. rooms.SelectMany(room => room.Corners).Select(frame.FromPlan).DefaultIfEmpty()];
        least = new(corners.Min(corner => corner.X), corners.Min(corner => corner.Y));
        Point2 size = new Point2(corners.Max(corner => corner.X), corners.Max(corner => corner.Y)) - least;
        firstMetres = joists.FirstOffsetMetres ?? least.Y;
        (LeastAlong, GreatestAlong) = (least.X, least.X + size.X);
        stepMetres = Math.Max(StepMetres, Math.Max(size.X, size.Y) / MostSteps);
        IReadOnlyList<Polygon> voids = [.. house.Levels[level].Above!.Voids];
        bool[,] isInside = new bool[(int)Math.Round(size.X / stepMetres) + 1, (int)Math.Round(size.Y / stepMetres) + 1];
        foreach (Polygon room in rooms)
        {
            Mark(isInside, room, EdgeMetres, true);
        }

        foreach (Polygon hole in voids)
        {
            Mark(isInside, hole, -EdgeMetres, false);
        }

        (clearAlong, clearAcross) = Clear(isInside);
        Turns = [.. TurnsOf(isInside)];
    }

    /// <summary>Depth of a joist, metres.</summary>
    internal double JoistDepthMetres { get; }

    /// <summary>Its middle above the lowest floor, metres.</summary>
    internal double HeightMetres { get; }

    /// <summary>Where it begins along the joists, metres.</summary>
    internal double LeastAlong { get; }

    /// <summary>Where it ends along the joists, metres.</summary>
    internal double GreatestAlong { get; }

    /// <summary>Where a shortest route may turn, on the plan: wherever the raster has a corner that blocks a straight line.</summary>
    internal IReadOnlyList<Point2> Turns { get; }

    /// <summary>The space above a level; null where the floor has no joists.</summary>
    internal static FloorSpace? Of(House house, int level)
    {
        if (level + 1 >= house.Levels.Count || house.Levels[level].Above is not { Joists: { } joists } above)
        {
            return null;
        }

        double depth = above.BuildUp.Layers.Select(layer => layer.Joists?.DepthMetres ?? 0).DefaultIfEmpty(0).Max();
        return depth > 0 ? new FloorSpace(house, level, joists, depth) : null;
    }

    /// <summary>Where a hole at a place of the plan comes out between joists, along and across them: there, or on either side of a joist.</summary>
    internal IEnumerable<Point2> BaysAt(Point2 plan)
    {
        Point2 at = frame.FromPlan(plan);
        double joist = Math.Round((at.Y - firstMetres) / spacingMetres) * spacingMetres;
        bool isOnJoist = Math.Abs(at.Y - firstMetres - joist) <= GeometryTolerances.SlackMetres;
        double aside = Math.Min(BesideJoistMetres, spacingMetres / 4);
        return (isOnJoist ? new[] { at.Y - aside, at.Y + aside } : [at.Y]).Select(across => new Point2(at.X, across)).Where(IsInside);
    }

    /// <summary>A place of it on the plan.</summary>
    internal Point2 OnPlan(Point2 at) => frame.ToPlan(at.X, at.Y);

    /// <summary>Whether a straight leg along the joists is clear.</summary>
    internal bool IsClearAlong(double from, double to, double across)
    {
        (int a, int b, int y) = (Column(Math.Min(from, to)), Column(Math.Max(from, to)), Row(across));
        return a >= 0 && b < clearAlong.GetLength(0) && y >= 0 && y < clearAlong.GetLength(1) && clearAlong[b, y] > b - a;
    }

    /// <summary>Whether a straight leg across the joists is clear.</summary>
    internal bool IsClearAcross(double along, double from, double to)
    {
        (int x, int a, int b) = (Column(along), Row(Math.Min(from, to)), Row(Math.Max(from, to)));
        return x >= 0 && x < clearAcross.GetLength(0) && a >= 0 && b < clearAcross.GetLength(1) && clearAcross[x, b] > b - a;
    }

    /// <summary>
    /// How many joists are between two places, given across them. Where no joist's position is known, one is taken to lie along the edge of
    /// the rooms; there may be one more or less.
    /// </summary>
    internal int Crossed(double from, double to)
    {
        (double one, double other) = ((Math.Min(from, to) - firstMetres) / spacingMetres, (Math.Max(from, to) - firstMetres) / spacingMetres);
        return Math.Max(0, (int)(Math.Ceiling(other - GeometryTolerances.SlackMetres) - Math.Floor(one + GeometryTolerances.SlackMetres) - 1));
    }

    /// <summary>
    /// The legs of a route through places of it, as few as possible without more length or more joists to cross: each along the joists,
    /// then across them, or the other way round.
    /// </summary>
    internal IEnumerable<RouteLeg> Legs(IReadOnlyList<Point3> way)
    {
        for (int i = 0; i + 1 < way.Count;)
        {
            int next = way.Count - 1;
            RouteLeg? leg;
            while ((leg = Leg(way[i], way[next], isClear: next == i + 1)) is null || IsWorse(leg, i, next))
            {
                next--;
            }

            yield return leg;
            i = next;
        }

        bool IsWorse(RouteLeg leg, int from, int to)
        {
            RouteLeg[] steps = [.. Enumerable.Range(from, to - from).Select(i => Leg(way[i], way[i + 1], isClear: true)!)];
            return leg.Holes > steps.Sum(step => step.Holes) || leg.LengthMetres > steps.Sum(step => step.LengthMetres) + GeometryTolerances.SlackMetres;
        }
    }

    // Along the joists first, or across them first; null if both are blocked.
    private RouteLeg? Leg(Point3 from, Point3 to, bool isClear)
    {
        Point2 a = frame.FromPlan(from.Plan), b = frame.FromPlan(to.Plan);
        foreach (Point2 corner in new[] { new Point2(b.X, a.Y), new Point2(a.X, b.Y) })
        {
            if (isClear || (IsClear(a, corner) && IsClear(corner, b)))
            {
                bool isStraight = Math.Min(Math.Abs(b.X - a.X), Math.Abs(b.Y - a.Y)) <= GeometryTolerances.SlackMetres;
                return new RouteLeg(LegKind.InFloor, name, from, to, Math.Abs(b.X - a.X) + Math.Abs(b.Y - a.Y), Crossed(a.Y, b.Y))
                {
                    Corner = isStraight ? null : OnPlan(corner).At(HeightMetres),
                };
            }
        }

        return null;
    }

    // Squares with two neighbours inside and the diagonal one between them not: a route turns there as close to that one as it can.
    private IEnumerable<Point2> TurnsOf(bool[,] isInside)
    {
        bool Inside(int x, int y) => x >= 0 && y >= 0 && x < isInside.GetLength(0) && y < isInside.GetLength(1) && isInside[x, y];
        for (int x = 0; x < isInside.GetLength(0); x++)
        {
            for (int y = 0; y < isInside.GetLength(1); y++)
            {
                foreach ((int dx, int dy) in isInside[x, y] ? Diagonals : [])
                {
                    if (Inside(x + dx, y) && Inside(x, y + dy) && !Inside(x + dx, y + dy))
                    {
                        yield return OnPlan(least + (stepMetres * new Point2(x + (WithinSteps * dx), y + (WithinSteps * dy))));
                    }
                }
            }
        }
    }

    private bool IsClear(Point2 from, Point2 to) => Math.Abs(from.X - to.X) > Math.Abs(from.Y - to.Y)
        ? IsClearAlong(from.X, to.X, from.Y) : IsClearAcross(from.X, from.Y, to.Y);

    private bool IsInside(Point2 at) => IsClearAlong(at.X, at.X, at.Y);

    private int Column(double along) => (int)Math.Round((along - least.X) / stepMetres);

    private int Row(double across) => (int)Math.Round((across - least.Y) / stepMetres);

    // Only squares near the outline are examined, so that the cost of many rooms grows only with their area.
    private void Mark(bool[,] isInside, Polygon outline, double beyondMetres, bool inside)
    {
        Point2[] corners = [.. outline.Corners.Select(frame.FromPlan)];
        double margin = Math.Max(0, beyondMetres) + stepMetres;
        int lastColumn = Math.Min(isInside.GetLength(0) - 1, Column(corners.Max(corner => corner.X) + margin));
        int lastRow = Math.Min(isInside.GetLength(1) - 1, Row(corners.Max(corner => corner.Y) + margin));
        for (int x = Math.Max(0, Column(corners.Min(corner => corner.X) - margin)); x <= lastColumn; x++)
        {
            for (int y = Math.Max(0, Row(corners.Min(corner => corner.Y) - margin)); y <= lastRow; y++)
            {
                if (isInside[x, y] != inside
                    && outline.DepthOf(OnPlan(least + (stepMetres * new Point2(x, y)))) is var depth && (inside ? depth >= -beyondMetres : depth > -beyondMetres))
                {
                    isInside[x, y] = inside;
                }
            }
        }
    }

    private static (ushort[,] Along, ushort[,] Across) Clear(bool[,] isInside)
    {
        (int columns, int rows) = (isInside.GetLength(0), isInside.GetLength(1));
        ushort[,] along = new ushort[columns, rows], across = new ushort[columns, rows];
        for (int x = 0; x < columns; x++)
        {
            for (int y = 0; y < rows; y++)
            {
                if (isInside[x, y])
                {
                    along[x, y] = (ushort)(1 + (x > 0 ? along[x - 1, y] : 0));
                    across[x, y] = (ushort)(1 + (y > 0 ? across[x, y - 1] : 0));
                }
            }
        }

        return (along, across);
    }
}
