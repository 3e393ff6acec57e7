using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Fields;

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
