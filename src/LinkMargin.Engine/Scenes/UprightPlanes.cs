using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// The upright planes that lines on a plan stand in, found for all lines at once, so that a wall in two parts stands in one plane.
/// Which lines share a plane, and where it lies, depends on the lines alone, not on their order or direction.
/// </summary>
internal sealed class UprightPlanes
{
    // Lines at a smaller angle than this, and closer than this to each other's middle, share a plane: far above rounding, far
    // below anything built.
    private const double SameSine = 1e-7;
    private const double SameMetres = 1e-7;

    private readonly Line[] lines;
    private readonly Clusters clusters;
    private readonly int[] numbers; // of each line's plane

    internal UprightPlanes(IEnumerable<(Point2 Start, Point2 End)> ends)
    {
        lines = [.. ends.Select(end => new Line(end.Start, end.End))];
        clusters = new Clusters(lines.Length);
        numbers = new int[lines.Length];
        foreach (int[] direction in Directions())
        {
            JoinAlong(direction);
        }

        int[][] planes = clusters.All();
        for (int plane = 0; plane < planes.Length; plane++)
        {
            foreach (int line in planes[plane])
            {
                numbers[line] = plane;
            }
        }

        All = [.. planes.Select(PlaneOf)];
    }

    /// <summary>The planes.</summary>
    internal IReadOnlyList<UprightPlane> All { get; }

    /// <summary>The number of the plane a line stands in.</summary>
    internal int NumberOf(int line) => numbers[line];

    // Lines whose directions a chain of small differences connects. A line without a length stands alone.
    private IEnumerable<int[]> Directions()
    {
        int[] order = [.. Enumerable.Range(0, lines.Length).Where(i => lines[i].LengthMetres > 0).OrderBy(i => lines[i].Radians)];
        var same = new Clusters(order.Length);
        for (int i = 0; i < order.Length; i++)
        {
            int next = (i + 1) % order.Length; // the greatest angle, below half a turn, is next to the least
            if (Math.Abs(Point2.Cross(lines[order[i]].Along, lines[order[next]].Along)) <= SameSine)
            {
                same.Join(i, next);
            }
        }

        return same.All().Select(direction => direction.Select(i => order[i]).ToArray());
    }

    private void JoinAlong(int[] direction)
    {
        // Ordered across one of their directions; the window allows for how far the others turn from it.
        Line first = lines[direction[0]];
        double spread = direction.Max(i => Math.Abs(Point2.Cross(first.Along, lines[i].Along)));
        double extent = direction.Max(i => first.Middle.DistanceTo(lines[i].Middle));
        double window = SameMetres + (2 * spread * extent);
        double[] across = [.. direction.Select(i => first.Aside(lines[i].Middle))];
        int[] order = [.. direction];
        Array.Sort(across, order);
        for (int i = 0; i < order.Length; i++)
        {
            for (int j = i + 1; j < order.Length && across[j] - across[i] <= window; j++)
            {
                if (AreOne(lines[order[i]], lines[order[j]]))
                {
                    clusters.Join(order[i], order[j]);
                }
            }
        }
    }

    private static bool AreOne(in Line one, in Line other) =>
        Math.Abs(Point2.Cross(one.Along, other.Along)) <= SameSine
        && Math.Abs(one.Aside(other.Middle)) <= SameMetres
        && Math.Abs(other.Aside(one.Middle)) <= SameMetres;

    // The mean of its lines weighted by length, which does not change if a wall is cut in two.
    private UprightPlane PlaneOf(int[] members)
    {
        Line first = lines[members[0]];
        if (first.LengthMetres == 0)
        {
            return new UprightPlane(1, 0, first.Middle.X);
        }

        Point2 sum = new(0, 0);
        foreach (int i in members)
        {
            sum += (Point2.Dot(lines[i].Along, first.Along) < 0 ? -lines[i].LengthMetres : lines[i].LengthMetres) * lines[i].Along;
        }

        double length = double.Hypot(sum.X, sum.Y);
        var normal = new Point2(-sum.Y / length, sum.X / length);
        if (normal.X < -SameSine || (Math.Abs(normal.X) <= SameSine && normal.Y < 0))
        {
            normal = -1 * normal;
        }

        double offset = Point2.Dot(normal, first.Middle), beside = 0, metres = 0;
        foreach (int i in members)
        {
            beside += lines[i].LengthMetres * (Point2.Dot(normal, lines[i].Middle) - offset);
            metres += lines[i].LengthMetres;
        }

        return new UprightPlane(normal.X, normal.Y, offset + (beside / metres));
    }

    private readonly record struct Line
    {
        internal Line(Point2 start, Point2 end)
        {
            LengthMetres = start.DistanceTo(end);
            Middle = 0.5 * (start + end);
            Along = LengthMetres > 0 ? (1 / LengthMetres) * (end - start) : new Point2(0, 0);
            double radians = Math.Atan2(Along.Y, Along.X);
            Radians = radians < 0 ? radians + Math.PI : radians >= Math.PI ? radians - Math.PI : radians;
        }

        internal double LengthMetres { get; }

        internal Point2 Middle { get; }

        internal Point2 Along { get; }

        // 0 to less than half a turn, whichever end it is drawn from.
        internal double Radians { get; }

        internal double Aside(Point2 at) => Point2.Cross(Along, at - Middle);
    }
}

/// <summary>An upright plane.</summary>
/// <param name="NormalX">East component of its unit normal.</param>
/// <param name="NormalY">North component.</param>
/// <param name="Offset">Its distance from the plan's origin along the normal, metres.</param>
internal readonly record struct UprightPlane(double NormalX, double NormalY, double Offset);
