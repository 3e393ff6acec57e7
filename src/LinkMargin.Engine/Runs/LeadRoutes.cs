using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using QuikGraph;

namespace LinkMargin.Engine.Runs;

/// <summary>
/// How long a lead must be from a place in a room to others in it, laid as one lays it: along the walls at any height, not across doors,
/// windows or gaps but over or under them, and over the front of what stands against a wall. Off a wall it goes straight to what is near,
/// and down to the floor to what is farther. On one piece of furniture, or within reach of what it begins in, it goes straight there.
/// </summary>
public sealed class LeadRoutes
{
    /// <summary>Within this distance a lead goes straight, over whatever lies between, metres: an arm's length.</summary>
    public const double WithinReachMetres = 1;

    // A lead hangs freely up to this far from a wall, metres; farther off it lies on the floor.
    private const double OffWallMetres = 0.6;

    // What is no farther than this from a wall stands against it, metres.
    private const double AgainstWallMetres = 0.05;

    // Below this sill there is no wall to lay a lead along, metres.
    private const double SkirtingMetres = 0.1;

    private readonly double ceilingMetres;
    private readonly CablePlace from;
    private readonly Fixture? host;
    private readonly Polygon outline;
    private readonly RoomEdge[] edges;
    private readonly double[] starts; // of each edge along the walls, metres
    private readonly Bulge[] bulges;

    /// <summary>Lays out a room.</summary>
    /// <param name="house">The house.</param>
    /// <param name="from">Where leads begin.</param>
    /// <param name="room">The room, on the same level.</param>
    public LeadRoutes(House house, CablePlace from, Room room)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(room);
        (this.from, outline) = (from, room.Outline);
        host = house.Fixtures.FirstOrDefault(fixture => fixture.Name == from.Fixture);
        Level level = house.Levels[from.LevelIndex];
        ceilingMetres = level.HeightMetres;
        edges = [.. RoomEdges.Of(level with { Rooms = [room] }, from.LevelIndex)];
        starts = new double[edges.Length];
        for (int i = 1; i < edges.Length; i++)
        {
            starts[i] = starts[i - 1] + edges[i - 1].LengthMetres;
        }

        bulges = [.. house.Fixtures.Where(fixture => fixture.LevelIndex == from.LevelIndex && !fixture.IsShell && fixture.Seat is null && outline.Contains(fixture.Centre)).SelectMany(BulgesOf)];
    }

    /// <summary>The length to each of some places, metres; infinite where no wall leads there.</summary>
    /// <param name="places">The places, each with the fixture it is on, if any.</param>
    public IReadOnlyList<double> LengthsTo(IReadOnlyList<CablePlace> places)
    {
        ArgumentNullException.ThrowIfNull(places);
        Landing[] begins = [.. LandingsOf(from)];
        Landing[][] landings = [.. places.Select(place => LandingsOf(place).ToArray())];
        Landing[] all = [.. begins, .. landings.SelectMany(some => some)];
        double[] columns = [.. Columns().Concat(all.Select(landing => landing.Along)).Distinct().Order()];
        double[] rows =
        [
            .. edges.SelectMany(edge => edge.Openings).SelectMany(opening => new[] { opening.Sill, opening.Head })
                .Concat(bulges.SelectMany(bulge => new[] { bulge.Bottom, bulge.Top })).Concat(all.Select(landing => landing.Height))
                .Append(0).Append(ceilingMetres).Where(height => height >= 0 && height <= ceilingMetres).Distinct().Order(),
        ];
        ShortestRoutes<STaggedEdge<int, double>> routes = Search(columns, rows, begins);
        return
        [
            .. places.Select((place, i) => Straight(place)
                ?? landings[i].Select(landing => routes.CostTo(NodeOf(columns, rows, landing)) + landing.Metres)
                    .DefaultIfEmpty(double.PositiveInfinity).Min()),
        ];
    }

    private double? Straight(CablePlace to)
    {
        double square = Square(to.Plan - from.Plan, to.HeightMetres - from.HeightMetres);
        return (from.Fixture is not null && from.Fixture == to.Fixture) || Math.Min(square, host is null ? square : BeyondHost(to, host)) <= WithinReachMetres ? square : null;
    }

    // A lead may also run along what the console stands in: the length from there.
    private static double BeyondHost(CablePlace to, Fixture host)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(host.TurnDegrees));
        Point2 off = new PlanFrame(cos, sin).FromPlan(to.Plan - host.Centre);
        return Square(
            new Point2(Math.Max(0, Math.Abs(off.X) - (host.SizeX / 2)), Math.Max(0, Math.Abs(off.Y) - (host.SizeY / 2))),
            Math.Max(0, Math.Max(host.FromMetres - to.HeightMetres, to.HeightMetres - host.ToMetres)));
    }

    private static double Square(Point2 plan, double height) => Math.Abs(plan.X) + Math.Abs(plan.Y) + Math.Abs(height);

    // Where a lead from a place reaches the walls opposite it, or the fronts of furniture there: those close by or, with none close by, all of
    // them, across the floor.
    private IEnumerable<Landing> LandingsOf(CablePlace place)
    {
        double height = Math.Clamp(place.HeightMetres, 0, ceilingMetres);
        var near = edges.Select((edge, i) => (edge, i, Along: edge.Abreast(place.Plan), Off: Math.Abs(edge.LeftOf(place.Plan))))
            .Where(one => one.edge.Wall is not null && one.Along >= 0 && one.Along <= one.edge.LengthMetres)
            .Select(one => (one.edge, one.Along, At: starts[one.i] + one.Along, Off: OffFront(starts[one.i] + one.Along, one.Off, height), OffAtFloor: OffFront(starts[one.i] + one.Along, one.Off, 0)))
            .OrderBy(one => one.Off).ToList();
        foreach ((RoomEdge edge, double along, double at, double off, double offAtFloor) in near.Where(one => one.Off <= OffWallMetres || near[0].Off > OffWallMetres))
        {
            if (off <= OffWallMetres && !edge.Openings.Any(opening => along > opening.From && along < opening.To && height > opening.Sill && height < opening.Head))
            {
                yield return new Landing(at, height, off);
            }

            if (!edge.Openings.Any(opening => along > opening.From && along < opening.To && opening.Sill < SkirtingMetres))
            {
                yield return new Landing(at, 0, offAtFloor + height);
            }
        }
    }

    private double OffFront(double at, double offWall, double height) => offWall - bulges
        .Where(bulge => at > bulge.From && at < bulge.To && height > bulge.Bottom && height < bulge.Top && bulge.Depth <= offWall)
        .Select(bulge => bulge.Depth).DefaultIfEmpty(0).Max();

    private IEnumerable<double> Columns() =>
        edges.SelectMany((edge, i) => edge.Openings.SelectMany(opening => new[] { opening.From, opening.To }).Where(along => along > 0 && along < edge.LengthMetres)
            .Append(0).Append(edge.LengthMetres).Select(along => starts[i] + along))
        .Concat(bulges.SelectMany(bulge => new[] { bulge.From, bulge.To }));

    // Over the walls, unrolled: every place where a lead may turn, in columns along them and rows up them, and one node more where it begins.
    private ShortestRoutes<STaggedEdge<int, double>> Search(double[] columns, double[] rows, Landing[] begins)
    {
        var graph = new UndirectedGraph<int, STaggedEdge<int, double>>(allowParallelEdges: true);
        int source = columns.Length * rows.Length;
        graph.AddVertexRange(Enumerable.Range(0, source + 1));
        foreach (Landing begin in begins)
        {
            Join(source, NodeOf(columns, rows, begin), begin.Metres);
        }

        for (int x = 0; x < columns.Length; x++)
        {
            int next = (x + 1) % columns.Length; // round the room: the last column is where the first is
            for (int y = 0; y < rows.Length; y++)
            {
                if (y + 1 < rows.Length && IsFreeUp(columns[x], rows[y], rows[y + 1]))
                {
                    Join(Node(x, y), Node(x, y + 1), rows[y + 1] - rows[y]);
                }

                if (next <= x)
                {
                    Join(Node(x, y), Node(next, y), 0);
                }
                else if (LengthAlong(columns[x], columns[next], rows[y]) is { } along)
                {
                    Join(Node(x, y), Node(next, y), along);
                }
            }
        }

        return new(graph, source, edge => edge.Tag);

        int Node(int x, int y) => (x * rows.Length) + y;

        void Join(int one, int other, double metres) => graph.AddEdge(new(one, other, metres));
    }

    private static int NodeOf(double[] columns, double[] rows, Landing landing) =>
        (Array.BinarySearch(columns, landing.Along) * rows.Length) + Array.BinarySearch(rows, landing.Height);

    private bool IsFreeUp(double along, double bottom, double top) => !edges.Where((edge, i) => edge.Openings.Any(opening =>
        along > starts[i] + opening.From && along < starts[i] + opening.To && top > opening.Sill && bottom < opening.Head)).Any();

    // Between neighbouring columns; null where there is no wall at that height.
    private double? LengthAlong(double from, double to, double height)
    {
        double middle = (from + to) / 2;
        int i = Array.FindLastIndex(starts, start => start <= middle);
        bool isBarred = edges[i].Wall is null || edges[i].Openings.Any(opening => middle > starts[i] + opening.From && middle < starts[i] + opening.To
            && (height > opening.Sill || opening.Sill < SkirtingMetres) && height < opening.Head);
        return isBarred ? null : to - from
            + bulges.Where(bulge => height > bulge.Bottom && height < bulge.Top).Sum(bulge =>
                (bulge.From == from ? bulge.Depth : 0) + (bulge.To == to ? bulge.Depth : 0));
    }

    // The parts of walls that a piece of furniture stands against. Things in it or on it still reach the wall.
    private IEnumerable<Bulge> BulgesOf(Fixture fixture)
    {
        IReadOnlyList<Point2> corners = fixture.Corners();
        for (int i = 0; i < edges.Length; i++)
        {
            RoomEdge edge = edges[i];
            double half = edge.Wall?.HalfThicknessMetres ?? 0, nearest = corners.Min(corner => Math.Abs(edge.LeftOf(corner)));
            double a = Math.Max(0, corners.Min(edge.Abreast)), b = Math.Min(edge.LengthMetres, corners.Max(edge.Abreast));
            if (edge.Wall is not null && nearest <= half + AgainstWallMetres && b - a > AgainstWallMetres && corners.All(corner => edge.Abreast(corner) is var along && along >= -half && along <= edge.LengthMetres + half))
            {
                yield return new Bulge(starts[i] + a, starts[i] + b, fixture.FromMetres > SkirtingMetres ? fixture.FromMetres : -1, fixture.ToMetres, corners.Max(corner => Math.Abs(edge.LeftOf(corner))) - half);
            }
        }
    }

    // Where a lead reaches the wall: how far along, how high, and the length of lead up to there.
    private readonly record struct Landing(double Along, double Height, double Metres);

    // Furniture against a wall: its extent along the wall and up it, and how far it projects into the room.
    private readonly record struct Bulge(double From, double To, double Bottom, double Top, double Depth);
}
