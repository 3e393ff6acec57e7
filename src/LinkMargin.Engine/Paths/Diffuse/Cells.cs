using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>The spaces in which a diffuse field is taken for even: each room of each level, and each hollow fixture.</summary>
internal sealed class Cells
{
    /// <summary>Out of doors, where nothing comes back from.</summary>
    internal const int Outdoors = -1;

    // How far beside a wall's middle line its room is looked for: rooms may be written to their clear size.
    private static readonly double[] BesideMetres = [0.06, 0.15, FarthestBesideMetres];

    /// <summary>The farthest of those.</summary>
    internal const double FarthestBesideMetres = 0.3;

    private readonly House house;
    private readonly int[] firstOfLevel;
    private readonly FixtureBox[] shells;

    internal Cells(Scene scene)
    {
        house = scene.House;
        shells = [.. scene.Boxes.Where(box => box.IsShell)];
        firstOfLevel = new int[house.Levels.Count + 1];
        for (int i = 0; i < house.Levels.Count; i++)
        {
            firstOfLevel[i + 1] = firstOfLevel[i] + house.Levels[i].Rooms.Count;
        }
    }

    /// <summary>How many there are.</summary>
    internal int Count => firstOfLevel[^1] + shells.Length;

    /// <summary>The cell of a hollow fixture.</summary>
    internal int OfShell(int shell) => firstOfLevel[^1] + shell;

    /// <summary>The cell of a room.</summary>
    internal int OfRoom(int level, int room) => firstOfLevel[level] + room;

    /// <summary>The room at a plan point of a level, hollow fixtures aside.</summary>
    internal int RoomAt(int level, Point2 at)
    {
        IReadOnlyList<Room> rooms = house.Levels[level].Rooms;
        for (int i = 0; i < rooms.Count; i++)
        {
            if (rooms[i].Outline.Contains(at))
            {
                return firstOfLevel[level] + i;
            }
        }

        return Outdoors;
    }

    /// <summary>The room on one side of a wall: at a point on its middle line, in a direction.</summary>
    internal int RoomBeside(int level, Point2 at, Point2 direction)
    {
        foreach (double beside in BesideMetres)
        {
            int room = RoomAt(level, at + (beside * direction));
            if (room != Outdoors)
            {
                return room;
            }
        }

        return Outdoors;
    }

    /// <summary>The cell at a place.</summary>
    internal int At(Point3 at)
    {
        for (int i = 0; i < shells.Length; i++)
        {
            if (shells[i].Holds(at))
            {
                return OfShell(i);
            }
        }

        int level = house.LevelIndexAt(at.Z);
        int room = RoomAt(level, at.Plan);
        if (room != Outdoors)
        {
            return room;
        }

        // In the line of a wall between rooms written to their clear size: the nearest room.
        IReadOnlyList<Room> rooms = house.Levels[level].Rooms;
        double nearest = FarthestBesideMetres;
        for (int i = 0; i < rooms.Count; i++)
        {
            double away = -rooms[i].Outline.DepthOf(at.Plan);
            if (away < nearest)
            {
                nearest = away;
                room = OfRoom(level, i);
            }
        }

        return room;
    }
}
