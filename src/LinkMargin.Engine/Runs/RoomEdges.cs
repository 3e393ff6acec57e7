using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Runs;

/// <summary>One edge of a room's outline, with the places on it where a route may turn, begin, end or leave.</summary>
internal sealed class RoomEdge
{
    private readonly SortedSet<double> stops = [];

    internal RoomEdge(int level, int room, Point2 start, Point2 end)
    {
        (Level, Room, Start, End) = (level, room, start, end);
        LengthMetres = start.DistanceTo(end);
        Along = (1 / LengthMetres) * (end - start);
        AddAt(0);
        AddAt(LengthMetres);
    }

    internal int Level { get; }

    internal int Room { get; }

    internal Point2 Start { get; }

    internal Point2 End { get; }

    internal double LengthMetres { get; }

    /// <summary>Its direction, of unit length.</summary>
    internal Point2 Along { get; }

    /// <summary>Where its openings are, metres from its start, with how low and how high they reach over the floor.</summary>
    internal List<(double From, double To, double Sill, double Head)> Openings { get; } = [];

    /// <summary>What stands on it; null where two rooms meet without a wall.</summary>
    internal Wall? Wall { get; set; }

    /// <summary>The places, metres from its start, in order.</summary>
    internal IReadOnlyCollection<double> Stops => stops;

    internal Point2 At(double metres) => Start + (metres * Along);

    /// <summary>The place on it abreast of a point, metres from its start; outside 0 to its length where the point is past an end.</summary>
    internal double Abreast(Point2 at) => Point2.Dot(at - Start, Along);

    /// <summary>How far to the left of it a point lies, metres.</summary>
    internal double LeftOf(Point2 at) => Point2.Cross(Along, at - Start);

    /// <summary>Adds a place unless it is on one already, or past an end; gives the place on the edge.</summary>
    internal double? AddAt(double metres)
    {
        if (metres < -StopSlackMetres || metres > LengthMetres + StopSlackMetres)
        {
            return null;
        }

        foreach (double near in stops.GetViewBetween(metres - StopSlackMetres, metres + StopSlackMetres))
        {
            return near;
        }

        double inside = Math.Clamp(metres, 0, LengthMetres);
        stops.Add(inside);
        return inside;
    }

    /// <summary>Whether a cable at a height over the floor can go from one place to another.</summary>
    internal bool IsFree(double from, double to, double heightMetres) => !Openings.Any(opening =>
        opening.From < Math.Max(from, to) - StopSlackMetres && opening.To > Math.Min(from, to) + StopSlackMetres
        && heightMetres >= opening.Sill && heightMetres <= opening.Head);

    /// <summary>Whether there is wall at a place from the floor to the ceiling.</summary>
    internal bool IsSolid(double at) => !Openings.Any(opening => at > opening.From + StopSlackMetres && at < opening.To - StopSlackMetres);

    // Places closer together are one.
    internal const double StopSlackMetres = 0.01;
}

/// <summary>The edges of all rooms of a house, with the places on them that a route may use.</summary>
internal sealed class RoomEdges
{
    /// <summary>Two rooms whose outlines run so far apart at most have one wall between them, metres.</summary>
    internal const double ThickestWallMetres = 0.6;

    // Two edges at less than this angle run along each other.
    private const double AlongSine = 0.02;

    private readonly House house;
    private readonly List<RoomEdge>[] edges;

    internal RoomEdges(House house)
    {
        this.house = house;
        edges = [.. house.Levels.Select((level, i) => Of(level, i))];
    }

    internal IReadOnlyList<RoomEdge> OfLevel(int level) => edges[level];

    internal IEnumerable<RoomEdge> OfRoom(int level, int room) => edges[level].Where(edge => edge.Room == room);

    /// <summary>The room a place is in, or the nearest one within a wall's thickness; −1 if there is none.</summary>
    internal int RoomAt(int level, Point2 at)
    {
        IReadOnlyList<Room> rooms = house.Levels[level].Rooms;
        int inside = rooms.Select((room, i) => (room, i)).Where(pair => pair.room.Outline.Contains(at)).Select(pair => pair.i).DefaultIfEmpty(-1).First();
        return inside >= 0 || rooms.Count == 0 ? inside
            : rooms.Select((room, i) => (i, Depth: room.Outline.DepthOf(at))).MaxBy(pair => pair.Depth) is var (nearest, depth)
                && depth >= -ThickestWallMetres / 2 ? nearest : -1;
    }

    /// <summary>
    /// Gives every place of an edge to the edge beside it, across a wall, and to those above and below it: a hole may be bored there. Once
    /// all places that matter by themselves have been added.
    /// </summary>
    internal void Share()
    {
        foreach (List<RoomEdge> level in edges)
        {
            foreach ((RoomEdge one, RoomEdge other) in Beside(level, level).ToList())
            {
                Give(one, other);
            }
        }

        for (int i = 0; i + 1 < edges.Length; i++)
        {
            foreach ((RoomEdge one, RoomEdge other) in Beside(edges[i], edges[i + 1]).ToList())
            {
                Give(one, other);
                Give(other, one);
            }
        }
    }

    /// <summary>Pairs of edges that run along each other within a wall's thickness, of two rooms.</summary>
    internal static IEnumerable<(RoomEdge One, RoomEdge Other)> Beside(IReadOnlyList<RoomEdge> some, IReadOnlyList<RoomEdge> others)
    {
        foreach (RoomEdge one in some)
        {
            foreach (RoomEdge other in others)
            {
                if ((one.Level != other.Level || one.Room != other.Room)
                    && Math.Abs(Point2.Cross(one.Along, other.Along)) < AlongSine
                    && Math.Abs(one.LeftOf(other.Start)) <= ThickestWallMetres
                    && Math.Max(one.Abreast(other.Start), one.Abreast(other.End)) > 0
                    && Math.Min(one.Abreast(other.Start), one.Abreast(other.End)) < one.LengthMetres)
                {
                    yield return (one, other);
                }
            }
        }
    }

    private static void Give(RoomEdge from, RoomEdge to)
    {
        foreach (double stop in from.Stops.ToList())
        {
            to.AddAt(to.Abreast(from.At(stop)));
        }
    }

    private static List<RoomEdge> Of(Level level, int index)
    {
        List<RoomEdge> all = [];
        for (int room = 0; room < level.Rooms.Count; room++)
        {
            IReadOnlyList<Point2> corners = level.Rooms[room].Outline.Corners;
            for (int i = 0; i < corners.Count; i++)
            {
                Point2 start = corners[i], end = corners[(i + 1) % corners.Count];
                if (start.DistanceTo(end) > RoomEdge.StopSlackMetres)
                {
                    all.Add(new RoomEdge(index, room, start, end));
                }
            }
        }

        foreach (RoomEdge edge in all)
        {
            foreach (Wall wall in level.Walls.Where(wall => IsOn(wall, edge)))
            {
                edge.Wall ??= wall;
                foreach (Opening opening in wall.Openings)
                {
                    Point2 along = (1 / wall.LengthMetres) * (wall.End - wall.Start);
                    double a = edge.Abreast(wall.Start + (opening.OffsetMetres * along));
                    double b = edge.Abreast(wall.Start + ((opening.OffsetMetres + opening.WidthMetres) * along));
                    edge.Openings.Add((Math.Min(a, b), Math.Max(a, b), opening.SillMetres, opening.SillMetres + opening.HeightMetres));
                    edge.AddAt(a);
                    edge.AddAt(b);
                }
            }
        }

        return all;
    }

    private static bool IsOn(Wall wall, RoomEdge edge)
    {
        if (wall.LengthMetres <= 0)
        {
            return false;
        }

        Point2 along = (1 / wall.LengthMetres) * (wall.End - wall.Start);
        (double a, double b) = (edge.Abreast(wall.Start), edge.Abreast(wall.End));
        return Math.Abs(Point2.Cross(along, edge.Along)) < AlongSine
            && Math.Abs(edge.LeftOf(wall.Start)) <= ThickestWallMetres / 2
            && Math.Max(a, b) > RoomEdge.StopSlackMetres && Math.Min(a, b) < edge.LengthMetres - RoomEdge.StopSlackMetres;
    }
}
