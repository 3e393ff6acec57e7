using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Plots.Contours;

/// <summary>
/// A field as a continuous surface: bilinear between the centres of its cells. A ring of cells around the computed ones gets the
/// mean of its computed neighbours, so that the surface extends past the last cell's centre to the wall; beyond that it is
/// NaN. For drawing, cells may be smoothed with their neighbours in the same room: the edge of a wall's shadow is not sharp to a
/// tenth of a metre, and a contour line along the steps of the cells would look more exact than it is.
/// </summary>
internal sealed class FieldSurface
{
    private const int NoRoom = -1;

    private double[] values;
    private readonly int[] rooms;

    /// <summary>Makes a surface.</summary>
    /// <param name="field">The field.</param>
    /// <param name="all">All rooms of the level; values are not smoothed across their borders.</param>
    /// <param name="evenings">
    /// How often each cell is smoothed with its neighbours, with weights 1 2 1 in both directions; 0 for never.
    /// </param>
    /// <param name="filled">Outlines of solid fixtures: cells in them count as not computed; null for none.</param>
    public FieldSurface(Field field, IReadOnlyList<Room> all, int evenings, IReadOnlyList<Polygon>? filled = null)
    {
        if (field.MarginDb.Count != field.Grid.Count)
        {
            throw new ArgumentException(
                $"A field of {field.Grid.Count} cells cannot have {field.MarginDb.Count} margins.", nameof(field));
        }

        Grid = field.Grid;
        double[] cells = [.. field.MarginDb];
        for (int i = 0; filled is { Count: > 0 } && i < cells.Length; i++)
        {
            Point2 centre = Grid.CentreOf(i % Grid.Columns, i / Grid.Columns);
            cells[i] = filled.Any(outline => outline.Contains(centre)) ? double.NaN : cells[i];
        }

        values = new double[Columns * Rows];
        rooms = new int[values.Length];
        for (int row = 0; row < Rows; row++)
        {
            for (int column = 0; column < Columns; column++)
            {
                double own = Cell(cells, column - 1, row - 1);
                int node = (row * Columns) + column;
                values[node] = double.IsNaN(own) ? MeanOfNeighbours(cells, column - 1, row - 1) : own;
                rooms[node] = double.IsNaN(own) ? NoRoom : RoomAt(all, NodePosition(column, row));
            }
        }

        for (int i = 0; i < evenings; i++)
        {
            values = Evened();
        }
    }

    public Grid Grid { get; }

    /// <summary>Nodes from west to east: the centres of the cells and of one ring around them.</summary>
    public int Columns => Grid.Columns + 2;

    /// <summary>Nodes from south to north.</summary>
    public int Rows => Grid.Rows + 2;

    public double AtNode(int column, int row) => values[(row * Columns) + column];

    /// <summary>The index of the room that a node's cell is in; negative where the field was not computed.</summary>
    public int RoomOfNode(int node) => rooms[node];

    /// <summary>The same surface with other values at its nodes, row by row like <see cref="AtNode"/>.</summary>
    public FieldSurface With(double[] atNodes)
    {
        if (atNodes.Length != values.Length)
        {
            throw new ArgumentException($"A surface of {values.Length} nodes cannot have {atNodes.Length} values.", nameof(atNodes));
        }

        var other = (FieldSurface)MemberwiseClone();
        other.values = atNodes;
        return other;
    }

    public Point2 NodePosition(double column, double row) => new(
        Grid.Origin.X + ((column - 0.5) * Grid.CellMetres),
        Grid.Origin.Y + ((row - 0.5) * Grid.CellMetres));

    /// <summary>The surface at a place on the plan; NaN outside it.</summary>
    public double At(double x, double y)
    {
        double u = ColumnAt(x), v = RowAt(y);
        if (!(u >= 0 && v >= 0 && u <= Columns - 1 && v <= Rows - 1))
        {
            return double.NaN;
        }

        int column = Math.Min((int)u, Columns - 2), row = Math.Min((int)v, Rows - 2);
        double fu = u - column, fv = v - row;
        int at = (row * Columns) + column;
        double south = values[at] + (fu * (values[at + 1] - values[at]));
        double north = values[at + Columns] + (fu * (values[at + Columns + 1] - values[at + Columns]));
        return south + (fv * (north - south));
    }

    /// <summary>The place of a node, as a number of columns, that is as far east; whole at nodes.</summary>
    public double ColumnAt(double x) => ((x - Grid.Origin.X) / Grid.CellMetres) + 0.5;

    /// <summary>Writes the surface abreast of each column of nodes, as far north as a place; NaN outside it.</summary>
    public void AbreastOf(double y, Span<double> atColumns)
    {
        double v = RowAt(y);
        if (!(v >= 0 && v <= Rows - 1))
        {
            atColumns.Fill(double.NaN);
            return;
        }

        int row = Math.Min((int)v, Rows - 2);
        ReadOnlySpan<double> south = values.AsSpan(row * Columns, Columns), north = values.AsSpan((row + 1) * Columns, Columns);
        for (int column = 0; column < Columns; column++)
        {
            atColumns[column] = south[column] + ((v - row) * (north[column] - south[column]));
        }
    }

    private double RowAt(double y) => ((y - Grid.Origin.Y) / Grid.CellMetres) + 0.5;

    private static int RoomAt(IReadOnlyList<Room> all, Point2 place)
    {
        for (int i = 0; i < all.Count; i++)
        {
            if (all[i].Outline.Contains(place))
            {
                return i;
            }
        }

        return all.Count;
    }

    private double[] Evened()
    {
        double[] evened = new double[values.Length];
        for (int row = 0; row < Rows; row++)
        {
            for (int column = 0; column < Columns; column++)
            {
                evened[(row * Columns) + column] = Evened(column, row);
            }
        }

        return evened;
    }

    private double Evened(int column, int row)
    {
        double own = AtNode(column, row), sum = 0, weights = 0;
        int room = rooms[(row * Columns) + column];
        for (int dy = -1; dy <= 1; dy++)
        {
            for (int dx = -1; dx <= 1; dx++)
            {
                int x = column + dx, y = row + dy;
                bool isSame = x >= 0 && y >= 0 && x < Columns && y < Rows && rooms[(y * Columns) + x] == room;
                double value = isSame ? AtNode(x, y) : double.NaN;
                if (!double.IsNaN(value))
                {
                    double weight = (2 - Math.Abs(dx)) * (2 - Math.Abs(dy));
                    sum += weight * value;
                    weights += weight;
                }
            }
        }

        return double.IsNaN(own) ? own : sum / weights;
    }

    private double Cell(double[] cells, int column, int row)
    {
        bool inside = column >= 0 && row >= 0 && column < Grid.Columns && row < Grid.Rows;
        return inside ? cells[(row * Grid.Columns) + column] : double.NaN;
    }

    private double MeanOfNeighbours(double[] cells, int column, int row)
    {
        double sum = 0;
        int count = 0;
        for (int dy = -1; dy <= 1; dy++)
        {
            for (int dx = -1; dx <= 1; dx++)
            {
                double value = Cell(cells, column + dx, row + dy);
                if (!double.IsNaN(value))
                {
                    sum += value;
                    count++;
                }
            }
        }

        return count > 0 ? sum / count : double.NaN;
    }
}
