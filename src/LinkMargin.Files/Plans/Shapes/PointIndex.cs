using LinkMargin.Engine.Geometry;

namespace LinkMargin.Files.Plans.Shapes;

/// <summary>Known corners, so that a computed point gets the exact coordinates of its corner.</summary>
internal sealed class PointIndex
{
    private readonly double cellMetres;
    private readonly Dictionary<(long X, long Y), List<Point2>> cells = [];

    /// <summary>An empty index with a given reach.</summary>
    internal PointIndex(double reachMetres)
    {
        ReachMetres = reachMetres;
        cellMetres = 4 * reachMetres;
    }

    /// <summary>How close a known corner must be to replace a point, metres.</summary>
    internal double ReachMetres { get; }

    /// <summary>Adds a corner, unless there is one at exactly that place.</summary>
    internal void Add(Point2 p)
    {
        (long, long) key = Cell(p.X, p.Y);
        if (!cells.TryGetValue(key, out List<Point2>? known))
        {
            cells[key] = known = [];
        }

        if (!known.Contains(p))
        {
            known.Add(p);
        }
    }

    /// <summary>The nearest known corner within reach, or null.</summary>
    internal Point2? Nearest(Point2 p)
    {
        double slack = ReachMetres + PlanLimits.RoundingMetres;
        Point2? best = null;
        double bestMetres = double.PositiveInfinity;
        (long x0, long y0) = Cell(p.X - slack, p.Y - slack);
        (long x1, long y1) = Cell(p.X + slack, p.Y + slack);
        for (long x = x0; x <= x1; x++)
        {
            for (long y = y0; y <= y1; y++)
            {
                foreach (Point2 q in cells.GetValueOrDefault((x, y), []))
                {
                    double metres = q.DistanceTo(p);
                    if (metres <= slack && metres < bestMetres)
                    {
                        (best, bestMetres) = (q, metres);
                    }
                }
            }
        }

        return best;
    }

    /// <summary>The nearest known corner within reach, otherwise the point itself.</summary>
    internal Point2 Snap(Point2 p) => Nearest(p) ?? p;

    /// <summary>The nearest known corner within reach; a point without one is added as a corner.</summary>
    internal Point2 SnapOrAdd(Point2 p)
    {
        if (Nearest(p) is { } known)
        {
            return known;
        }

        Add(p);
        return p;
    }

    private (long X, long Y) Cell(double x, double y) =>
        ((long)Math.Floor(x / cellMetres), (long)Math.Floor(y / cellMetres));
}
