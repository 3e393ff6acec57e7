using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Runs;

/// <summary>The edges of all rooms of a house, with the places on them that a route may use.</summary>
internal sealed class RoomEdges
{
    /// <summary>Two rooms whose outlines are at most this far apart have one wall between them, metres.</summary>
    internal const double ThickestWallMetres = 0.6;

    // What is farther from an edge than this is not considered, metres: more than a wall, since parallel edges may be at a small angle.
    private const double NearMetres = 1;

    // Besides the nearest wall, walls this close may be reached, metres.
    private const double NearWallMetres = 1;

    // Two edges at less than this angle count as parallel.
    private const double AlongSine = 0.02;

    private readonly House house;
    private readonly List<RoomEdge>[] edges;
    private readonly ILookup<int, RoomEdge>[] ofRooms;

    internal RoomEdges(House house)
    {
        this.house = house;
        edges = [.. house.Levels.Select((level, i) => Of(level, i))];
        ofRooms = [.. edges.Select(level => level.ToLookup(edge => edge.Room))];
    }

    internal IReadOnlyList<RoomEdge> OfLevel(int level) => edges[level];

    internal IEnumerable<RoomEdge> OfRoom(int level, int room) => ofRooms[level][room];

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
    /// The walls of its room that a place reaches, and where on each: the nearest, and others close by. That point becomes a place on the
    /// wall.
    /// </summary>
    /// <param name="level">The level.</param>
    /// <param name="at">The place.</param>
    /// <param name="main">Receives the places on walls.</param>
    internal List<(RoomEdge Edge, double Stop)> ReachedFrom(int level, Point2 at, HashSet<(RoomEdge, double)> main)
    {
        if (RoomAt(level, at) is not (>= 0 and var room))
        {
            return [];
        }

        var abreast = OfRoom(level, room)
            .Where(edge => edge.Wall is not null && edge.Abreast(at) is var along && along >= 0 && along <= edge.LengthMetres && edge.IsSolid(along))
            .OrderBy(edge => Math.Abs(edge.LeftOf(at)))
            .ToList();
        List<(RoomEdge, double)> reached = [];
        foreach (RoomEdge edge in abreast.Where((edge, i) => i == 0 || Math.Abs(edge.LeftOf(at)) <= NearWallMetres))
        {
            if (edge.AddAt(edge.Abreast(at)) is { } stop)
            {
                reached.Add((edge, stop));
                main.Add((edge, stop));
            }
        }

        return reached;
    }

    /// <summary>
    /// Copies every place of an edge to the edge beside it, across a wall, and to those above and below it: a hole may be bored there. To
    /// be called when all other places have been added.
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

    /// <summary>Pairs of parallel edges of two rooms within a wall's thickness of each other.</summary>
    internal static IEnumerable<(RoomEdge One, RoomEdge Other)> Beside(IReadOnlyList<RoomEdge> some, IReadOnlyList<RoomEdge> others)
    {
        var near = new PlanGrid([.. others.Select(other => other.Box)]);
        Point2 margin = new(NearMetres, NearMetres);
        foreach (RoomEdge one in some)
        {
            foreach (RoomEdge other in near.Near(one.Box.Least - margin, one.Box.Greatest + margin).Select(i => others[i]))
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

    /// <summary>The edges of a level's rooms, with the walls on them and their openings.</summary>
    internal static List<RoomEdge> Of(Level level, int index)
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

        var walls = new PlanGrid([.. level.Walls.Select(wall => PlanGrid.BoxOf(wall.Start, wall.End))]);
        Point2 margin = new(NearMetres, NearMetres);
        foreach (RoomEdge edge in all)
        {
            foreach (Wall wall in walls.Near(edge.Box.Least - margin, edge.Box.Greatest + margin).Select(i => level.Walls[i]).Where(wall => IsOn(wall, edge)))
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
