using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Fields;

/// <summary>The grid that covers a level's plan, and which of its cells lie in a room.</summary>
public static class LevelGrid
{
    /// <summary>The most cells a level may be cut into; more is an error in the cell or the plan.</summary>
    public const int MostCells = 20_000_000;

    /// <summary>The smallest grid over all rooms, or over all walls where the level has no room.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The cell is not above 0, or there would be more than <see cref="MostCells"/>.</exception>
    public static Grid Over(Level level, double cellMetres)
    {
        if (!(cellMetres > 0) || double.IsInfinity(cellMetres))
        {
            throw new ArgumentOutOfRangeException(nameof(cellMetres), cellMetres, "A cell must be finite and above 0 m.");
        }

        Point2[] corners = level.Rooms.Count > 0
            ? [.. level.Rooms.SelectMany(room => room.Outline.Corners)]
            : [.. level.Walls.SelectMany(wall => new[] { wall.Start, wall.End })];
        if (corners.Length == 0)
        {
            return new Grid(default, cellMetres, 0, 0);
        }

        Point2 least = new(corners.Min(c => c.X), corners.Min(c => c.Y));
        double columns = CellsAcross(corners.Max(c => c.X) - least.X, cellMetres);
        double rows = CellsAcross(corners.Max(c => c.Y) - least.Y, cellMetres);
        if (columns * rows > MostCells)
        {
            throw new ArgumentOutOfRangeException(
                nameof(cellMetres), cellMetres, $"{level.Name} would need more than {MostCells} cells; choose a larger cell.");
        }

        return new Grid(least, cellMetres, (int)columns, (int)rows);
    }

    /// <summary>Whether a cell's centre is where somebody could sit: in a room, or anywhere on a level without rooms.</summary>
    public static bool IsIndoors(Level level, Point2 centre) =>
        level.Rooms.Count == 0 || level.Rooms.Any(room => room.Outline.Contains(centre));

    // A plan of 6.4 m is 64 cells of 0.1 m, not 65 for the rounding of 6.4 / 0.1.
    private static double CellsAcross(double metres, double cellMetres) => Math.Max(1, Math.Ceiling((metres / cellMetres) - 1e-6));
}

/// <summary>
/// Square cells over a level's plan. Row 0 is the smallest y, column 0 the smallest x; cell (column, row) is number
/// row × columns + column.
/// </summary>
/// <param name="Origin">South-west corner of cell 0, metres.</param>
/// <param name="CellMetres">Side of a cell, metres, above 0.</param>
/// <param name="Columns">Cells from west to east.</param>
/// <param name="Rows">Cells from south to north.</param>
public sealed record Grid(Point2 Origin, double CellMetres, int Columns, int Rows)
{
    /// <summary>How many cells there are.</summary>
    public int Count => Columns * Rows;

    /// <summary>Centre of a cell.</summary>
    public Point2 CentreOf(int column, int row) =>
        new(Origin.X + ((column + 0.5) * CellMetres), Origin.Y + ((row + 0.5) * CellMetres));
}
