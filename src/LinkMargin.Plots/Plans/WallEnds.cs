using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Plots.Plans;

/// <summary>The walls of a level by place, each with its number, so that a joint asks only about walls beside it.</summary>
internal sealed class WallEnds
{
    // A wall has an entry in each cell it passes: some eight where walls are long, whatever their length.
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

    /// <summary>The walls that may pass within a centimetre or so of a place, in the level's order.</summary>
    public IEnumerable<Wall> Near(Point2 place)
    {
        List<int> here = cells.GetValueOrDefault((Cell(place.X), Cell(place.Y)), []);
        return here.Select(i => walls[i]);
    }

    // Piece by piece, each no longer than a cell, so that a slanted wall is entered beside its line alone.
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

        // Walls come in order, so a wall that is here already stands last.
        if (cell.Count == 0 || cell[^1] != number)
        {
            cell.Add(number);
        }
    }

    private int Cell(double metres) => (int)Math.Floor(metres / cellMetres);
}
