using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Plots.Building;

/// <summary>
/// How walls end where they meet. A wall is written by its middle line. One that ends against the side of another is drawn to that
/// one's middle line, or only to its face if the two are of different materials. If exactly two walls meet at an angle, their
/// faces are extended to each other, inside and outside (a mitre). If more meet and none passes through, each is extended by half
/// the thickness of the thickest wall at right angles to it.
/// </summary>
internal sealed class WallJoints(Level level, double leastThicknessMetres)
{
    private const double SamePlaceMetres = 0.01;

    // Sines of the angle between two walls: below the first they are in line, above the second at right angles.
    private const double InLineSine = 0.05;
    private const double SquareSine = 0.95;

    private const double InLineCosine = 0.99;

    // At most this share of a very short wall is cut off at each end.
    private const double LongestCut = 0.4;

    // A mitre longer than this many half thicknesses is not drawn.
    private const double LongestMitre = 4;

    private readonly WallEnds walls = new(level.Walls);

    public double HalfThicknessOf(Wall wall) => Math.Max(WallShape.ThicknessOf(wall.Material), leastThicknessMetres) / 2;

    /// <summary>The two corners at an end; first the right one, seen from that end into the wall.</summary>
    public (Point2 Right, Point2 Left) CornersAt(Wall wall, bool isStart)
    {
        Point2 end = isStart ? wall.Start : wall.End;
        Point2 inward = InwardAt(wall, isStart), left = new(-inward.Y, inward.X);
        double half = HalfThicknessOf(wall);
        (Wall Wall, Point2 Inward)[] others = [.. Meeting(wall, end)];
        double reach;
        if (RunningThrough(wall, end, others) is Wall through)
        {
            bool isSquare = Math.Abs(Point2.Cross(inward, WallShape.DirectionsOf(through).Along)) > SquareSine;
            bool goesOn = others.Any(o => Point2.Dot(o.Inward, inward) < -InLineCosine);
            reach = isSquare && through.Material.Name != wall.Material.Name && !(goesOn && TakesPrecedence(wall, through))
                ? -Math.Min(HalfThicknessOf(through), LongestCut * wall.LengthMetres)
                : 0;
        }
        else if (others is [var other]
            && Math.Abs(Point2.Cross(inward, other.Inward)) > InLineSine
            && Mitre(end, inward, half, other.Inward, HalfThicknessOf(other.Wall)) is (Point2 r, Point2 l))
        {
            return (r, l);
        }
        else
        {
            reach = others
                .Where(o => Math.Abs(Point2.Cross(inward, o.Inward)) > SquareSine)
                .Select(o => HalfThicknessOf(o.Wall))
                .DefaultIfEmpty(0)
                .Max();
        }

        Point2 cut = end - (reach * inward);
        return (cut - (half * left), cut + (half * left));
    }

    // A wall that continues on both sides of the end: a single one, or two in line that meet there too.
    private Wall? RunningThrough(Wall wall, Point2 end, (Wall Wall, Point2 Inward)[] others)
    {
        foreach ((Wall other, Point2 inward) in others)
        {
            if (others.Any(o => Point2.Dot(o.Inward, inward) < -InLineCosine))
            {
                return other;
            }
        }

        return walls.Near(end).FirstOrDefault(w => !ReferenceEquals(w, wall) && RunsPast(w, end));
    }

    // Where two lines of walls cross, one of them must pass through, otherwise the crossing would be a hole.
    private bool TakesPrecedence(Wall wall, Wall over)
    {
        int thicker = HalfThicknessOf(wall).CompareTo(HalfThicknessOf(over));
        return thicker != 0 ? thicker > 0 : string.CompareOrdinal(wall.Material.Name, over.Material.Name) < 0;
    }

    private static bool RunsPast(Wall wall, Point2 place)
    {
        (Point2 along, Point2 left) = WallShape.DirectionsOf(wall);
        Point2 from = place - wall.Start;
        double at = Point2.Dot(from, along), aside = Math.Abs(Point2.Dot(from, left));
        return aside < SamePlaceMetres && at > SamePlaceMetres && at < wall.LengthMetres - SamePlaceMetres;
    }

    private static Point2 InwardAt(Wall wall, bool isStart) => (isStart ? 1.0 : -1.0) * WallShape.DirectionsOf(wall).Along;

    private IEnumerable<(Wall Wall, Point2 Inward)> Meeting(Wall wall, Point2 end)
    {
        foreach (Wall other in walls.Near(end).Where(w => !ReferenceEquals(w, wall)))
        {
            if (other.Start.DistanceTo(end) < SamePlaceMetres)
            {
                yield return (other, InwardAt(other, isStart: true));
            }
            else if (other.End.DistanceTo(end) < SamePlaceMetres)
            {
                yield return (other, InwardAt(other, isStart: false));
            }
        }
    }

    // Our left face meets the other's right face, and our right face its left, both seen away from the joint.
    private static (Point2 Right, Point2 Left)? Mitre(Point2 joint, Point2 ours, double half, Point2 theirs, double otherHalf)
    {
        Point2 ourLeft = new(-ours.Y, ours.X), theirLeft = new(-theirs.Y, theirs.X);
        Point2 left = Meet(joint + (half * ourLeft), ours, joint - (otherHalf * theirLeft), theirs);
        Point2 right = Meet(joint - (half * ourLeft), ours, joint + (otherHalf * theirLeft), theirs);
        double longest = LongestMitre * Math.Max(half, otherHalf);
        return left.DistanceTo(joint) <= longest && right.DistanceTo(joint) <= longest ? (right, left) : null;
    }

    private static Point2 Meet(Point2 a, Point2 alongA, Point2 b, Point2 alongB)
    {
        double t = Point2.Cross(b - a, alongB) / Point2.Cross(alongA, alongB);
        return a + (t * alongA);
    }
}

/// <summary>A spatial index of a level's walls by number, so that a joint only checks the walls beside it.</summary>
internal sealed class WallEnds
{
    // A wall has an entry in each cell it passes: about eight for a wall of mean length, whatever that length is.
    private const double LeastCellMetres = 1;
    private const double CellsOfMeanWall = 8;
    private const double ReachMetres = 0.05;

    private readonly Dictionary<(int X, int Y), List<int>> cells = [];
    private readonly IReadOnlyList<Wall> walls;
    private readonly double cellMetres;

    public WallEnds(IReadOnlyList<Wall> walls)
    {
        this.walls = walls;
        cellMetres = Math.Max(LeastCellMetres, walls.Sum(w => w.LengthMetres) / Math.Max(1, walls.Count) / CellsOfMeanWall);
        for (int i = 0; i < walls.Count; i++)
        {
            Add(i);
        }
    }

    /// <summary>The walls that may pass within about a centimetre of a place, in the level's order.</summary>
    public IEnumerable<Wall> Near(Point2 place)
    {
        List<int> here = cells.GetValueOrDefault((Cell(place.X), Cell(place.Y)), []);
        return here.Select(i => walls[i]);
    }

    // In pieces no longer than a cell, so that a slanted wall is entered only in cells along its line.
    private void Add(int number)
    {
        Wall wall = walls[number];
        int pieces = (int)Math.Ceiling(wall.LengthMetres / cellMetres) + 1;
        Point2 step = (1.0 / pieces) * (wall.End - wall.Start);
        for (int piece = 0; piece < pieces; piece++)
        {
            Point2 a = wall.Start + (piece * step), b = a + step;
            for (int x = Cell(Math.Min(a.X, b.X) - ReachMetres); x <= Cell(Math.Max(a.X, b.X) + ReachMetres); x++)
            {
                for (int y = Cell(Math.Min(a.Y, b.Y) - ReachMetres); y <= Cell(Math.Max(a.Y, b.Y) + ReachMetres); y++)
                {
                    Enter(number, (x, y));
                }
            }
        }
    }

    private void Enter(int number, (int X, int Y) key)
    {
        if (!cells.TryGetValue(key, out List<int>? cell))
        {
            cells[key] = cell = [];
        }

        // Walls are added in order, so a wall that is already here is the last entry.
        if (cell.Count == 0 || cell[^1] != number)
        {
            cell.Add(number);
        }
    }

    private int Cell(double metres) => (int)Math.Floor(metres / cellMetres);
}
