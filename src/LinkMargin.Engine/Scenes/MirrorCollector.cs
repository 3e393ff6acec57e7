using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Scenes;

/// <summary>Puts upright panels into mirrors, one for each plane, so that a wall in two parts is one mirror.</summary>
internal sealed class MirrorCollector
{
    // Planes that differ by less are one: far above rounding, far below anything built.
    private const double SamePlane = 1e-7;

    private readonly List<Plane> planes = [];
    private readonly Dictionary<(long, long), List<int>> byDirection = [];

    /// <summary>The mirrors so far.</summary>
    internal IReadOnlyList<UprightMirror> All =>
        [.. planes.Select((p, i) => new UprightMirror(i, p.NormalX, p.NormalY, p.Offset, [.. p.Panels]))];

    /// <summary>How many there are.</summary>
    internal int Count => planes.Count;

    /// <summary>Adds a panel to the mirror of its plane.</summary>
    /// <returns>The mirror's number.</returns>
    internal int Add(
        Point2 start, Point2 end, Rise rise, int material, int name, IReadOnlyList<OpeningPanel> openings)
    {
        double length = start.DistanceTo(end);
        double nx = -(end.Y - start.Y) / length, ny = (end.X - start.X) / length;
        bool flipped = nx < -SamePlane || (Math.Abs(nx) <= SamePlane && ny < 0);
        (nx, ny) = flipped ? (-nx, -ny) : (nx, ny);
        int number = NumberOf(nx, ny, (nx * start.X) + (ny * start.Y));
        Plane plane = planes[number];

        double from = (plane.NormalX * start.Y) - (plane.NormalY * start.X);
        double to = (plane.NormalX * end.Y) - (plane.NormalY * end.X);
        bool runsBack = to < from;
        plane.Panels.Add(new MirrorPanel(
            Math.Min(from, to),
            Math.Max(from, to),
            rise,
            material,
            name,
            [.. openings.Select(o => runsBack
                ? o with { From = from - o.To, To = from - o.From }
                : o with { From = from + o.From, To = from + o.To }).OrderBy(o => o.From)]));
        return number;
    }

    private int NumberOf(double nx, double ny, double offset)
    {
        // The lattice only narrows the search; its neighbours are looked at too.
        const double Lattice = 1e-4;
        (long, long) home = ((long)Math.Round(nx / Lattice), (long)Math.Round(offset / Lattice));
        for (long i = -1; i <= 1; i++)
        {
            for (long j = -1; j <= 1; j++)
            {
                if (!byDirection.TryGetValue((home.Item1 + i, home.Item2 + j), out List<int>? near))
                {
                    continue;
                }

                foreach (int number in near)
                {
                    Plane p = planes[number];
                    if (Math.Abs(p.NormalX - nx) <= SamePlane
                        && Math.Abs(p.NormalY - ny) <= SamePlane
                        && Math.Abs(p.Offset - offset) <= SamePlane)
                    {
                        return number;
                    }
                }
            }
        }

        planes.Add(new Plane(nx, ny, offset, []));
        if (!byDirection.TryGetValue(home, out List<int>? own))
        {
            byDirection.Add(home, own = []);
        }

        own.Add(planes.Count - 1);
        return planes.Count - 1;
    }

    private sealed record Plane(double NormalX, double NormalY, double Offset, List<MirrorPanel> Panels);
}
