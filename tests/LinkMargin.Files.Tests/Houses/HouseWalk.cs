using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>Walks through a house: by doors and gaps from room to room, by stairwells from level to level.</summary>
internal sealed class HouseWalk
{
    private const string Outside = "outside";

    // Far enough off a wall to stand beside it, near enough to stand in no room but the next one.
    private const double StepMetres = 0.1;

    private readonly Dictionary<string, HashSet<string>> neighbours = [];
    private readonly List<string> windowsNotInOuterWalls = [];
    private readonly House house;

    internal HouseWalk(House house)
    {
        this.house = house;
        foreach (Level level in house.Levels)
        {
            foreach (Wall wall in level.Walls)
            {
                foreach (Opening opening in wall.Openings)
                {
                    Look(level, wall, opening);
                }
            }
        }

        foreach ((Level below, Level above) in house.Levels.Zip(house.Levels.Skip(1)))
        {
            foreach (Polygon hole in below.Above!.Voids)
            {
                Climb(below, above, hole);
            }
        }
    }

    /// <summary>Windows with a room on both sides, or on neither.</summary>
    internal IReadOnlyList<string> WindowsNotInOuterWalls => windowsNotInOuterWalls;

    /// <summary>Rooms no way leads to from outside.</summary>
    internal IReadOnlyList<string> RoomsOutOfReach
    {
        get
        {
            HashSet<string> reached = [Outside];
            Queue<string> next = new(reached);
            while (next.TryDequeue(out string? room))
            {
                foreach (string neighbour in neighbours.GetValueOrDefault(room, []).Where(reached.Add))
                {
                    next.Enqueue(neighbour);
                }
            }

            return [.. house.Levels.SelectMany(l => l.Rooms.Select(r => Label(l, r.Name))).Where(r => !reached.Contains(r))];
        }
    }

    /// <summary>The room at a place, or <c>outside</c>, with its level's name.</summary>
    internal static string RoomAt(Level level, Point2 place) =>
        level.Rooms.FirstOrDefault(r => r.Outline.Contains(place)) is { } room ? Label(level, room.Name) : Outside;

    private static string Label(Level level, string room) => $"{level.Name}: {room}";

    private void Look(Level level, Wall wall, Opening opening)
    {
        Point2 along = (1 / wall.LengthMetres) * (wall.End - wall.Start);
        Point2 middle = wall.Start + ((opening.OffsetMetres + (opening.WidthMetres / 2)) * along);
        Point2 step = StepMetres * new Point2(-along.Y, along.X);
        string left = RoomAt(level, middle + step), right = RoomAt(level, middle - step);
        if (opening.Kind != OpeningKind.Window)
        {
            Join(left, right);
        }
        else if (left == Outside == (right == Outside))
        {
            windowsNotInOuterWalls.Add($"{level.Name}: {opening.Name}");
        }
    }

    private void Climb(Level below, Level above, Polygon hole)
    {
        for (double x = hole.Least.X + StepMetres; x < hole.Greatest.X; x += StepMetres)
        {
            for (double y = hole.Least.Y + StepMetres; y < hole.Greatest.Y; y += StepMetres)
            {
                if (hole.Contains(new Point2(x, y)))
                {
                    Join(RoomAt(below, new Point2(x, y)), RoomAt(above, new Point2(x, y)));
                }
            }
        }
    }

    private void Join(string a, string b)
    {
        Neighbours(a).Add(b);
        Neighbours(b).Add(a);
    }

    private HashSet<string> Neighbours(string room)
    {
        if (!neighbours.TryGetValue(room, out HashSet<string>? known))
        {
            neighbours[room] = known = [];
        }

        return known;
    }
}
