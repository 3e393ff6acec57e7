using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>The spaces of the diffuse field: each room of each level, and each hollow fixture.</summary>
internal sealed class Cells
{
    /// <summary>Outdoors, from where nothing comes back.</summary>
    internal const int Outdoors = -1;

    // How far from a wall's centre line its room is searched for: rooms may be given by their clear size.
    private static readonly double[] BesideMetres = [0.06, 0.15, FarthestBesideMetres];

    /// <summary>The farthest of those.</summary>
    internal const double FarthestBesideMetres = 0.3;

    // How far past a room's edge walls are searched for, as a share of the distance to the edge: a wall in the edge counts.
    private const double PastEdge = 0.01;

    private readonly House house;
    private readonly PlanFrame frame;
    private readonly int[] firstOfLevel;
    private readonly PlacesOfOutlines[] rooms; // of each level
    private readonly FixtureBox[] shells; // smallest first: where one is inside another, the air belongs to the inner one

    internal Cells(Scene scene)
    {
        house = scene.House;
        frame = scene.Frame;
        shells = [.. scene.Boxes.Where(box => box.IsShell).OrderBy(box => box.CubicMetres)];
        rooms = [.. house.Levels.Select(level => new PlacesOfOutlines([.. level.Rooms.Select(room => room.Outline)], FarthestBesideMetres))];
        firstOfLevel = new int[house.Levels.Count + 1];
        for (int i = 0; i < house.Levels.Count; i++)
        {
            firstOfLevel[i + 1] = firstOfLevel[i] + house.Levels[i].Rooms.Count;
        }
    }

    /// <summary>How many there are.</summary>
    internal int Count => firstOfLevel[^1] + shells.Length;

    /// <summary>How many of them are rooms; they come first.</summary>
    internal int RoomCount => firstOfLevel[^1];

    /// <summary>The blocks of a cell.</summary>
    internal CellGrid GridOf(int cell)
    {
        if (cell >= RoomCount)
        {
            FixtureBox box = shells[cell - RoomCount];
            return new CellGrid(box.OutwardOf(1), box.Corners.ToArray(), box.VerticalExtent.Low, box.VerticalExtent.High);
        }

        int level = Array.FindLastIndex(firstOfLevel, first => first <= cell);
        Level here = house.Levels[level];
        return new CellGrid(frame.ToPlan(1, 0), here.Rooms[cell - firstOfLevel[level]].Outline.Corners, here.ElevationMetres, here.CeilingMetres);
    }

    /// <summary>The hollow fixtures, the smallest first.</summary>
    internal IReadOnlyList<FixtureBox> Shells => shells;

    /// <summary>The cell of a hollow fixture.</summary>
    internal int OfShell(FixtureBox box) => firstOfLevel[^1] + Array.IndexOf(shells, box);

    /// <summary>The cell around a fixture: the smallest hollow one it stands in, or the room.</summary>
    internal int Around(FixtureBox box) =>
        Array.Find(shells, box.IsWithin) is { } shell ? OfShell(shell) : RoomAt(box.Level, box.Centre);

    /// <summary>The cell of a room.</summary>
    internal int OfRoom(int level, int room) => firstOfLevel[level] + room;

    /// <summary>The room at a plan point of a level, ignoring hollow fixtures.</summary>
    internal int RoomAt(int level, Point2 at)
    {
        IReadOnlyList<Room> here = house.Levels[level].Rooms;
        foreach (int i in rooms[level].Near(at))
        {
            if (here[i].Outline.Contains(at))
            {
                return firstOfLevel[level] + i;
            }
        }

        return Outdoors;
    }

    /// <summary>The room on one side of a wall: at a point on its centre line, in a direction.</summary>
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
                return firstOfLevel[^1] + i;
            }
        }

        int level = house.LevelIndexAt(at.Z);
        int room = RoomAt(level, at.Plan);
        if (room != Outdoors)
        {
            return room;
        }

        // In the thickness of a wall between rooms given by their clear size: the nearest room, unless that wall stands between.
        IReadOnlyList<Room> here = house.Levels[level].Rooms;
        double nearest = FarthestBesideMetres;
        Polygon? beside = null;
        foreach (int i in rooms[level].Near(at.Plan))
        {
            double away = -here[i].Outline.DepthOf(at.Plan);
            if (away < nearest)
            {
                nearest = away;
                room = OfRoom(level, i);
                beside = here[i].Outline;
            }
        }

        return beside is not null && IsWallBetween(level, at.Plan, beside.NearestTo(at.Plan)) ? Outdoors : room;
    }

    // Whether a wall's centre line lies between a place and the nearest edge of a room, or in that edge.
    private bool IsWallBetween(int level, Point2 place, Point2 edge)
    {
        Point2 past = edge + (PastEdge * (edge - place)), onwards = past - place;
        foreach (Wall wall in house.Levels[level].Walls)
        {
            Point2 along = wall.End - wall.Start;
            double slack = GeometryTolerances.SlackMetres * wall.LengthMetres;
            double before = Point2.Cross(along, place - wall.Start), after = Point2.Cross(along, past - wall.Start);
            double start = Point2.Cross(onwards, wall.Start - place), end = Point2.Cross(onwards, wall.End - place);
            if (Math.Abs(before) > slack && before > 0 != after > 0 && Math.Min(start, end) <= slack && Math.Max(start, end) >= -slack)
            {
                return true;
            }
        }

        return false;
    }
}
