using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Fields;

/// <summary>
/// A grid cut into rectangles of cells with nothing between their centres: no wall, no door's plane, no edge of a room and no side of a
/// fixture at the height of the hands. Interpolation stays within one of them.
/// </summary>
internal sealed class FieldRegions
{
    private readonly Grid grid;
    private readonly bool[] isCutEast; // between a cell and the next to the east
    private readonly bool[] isCutNorth;
    private readonly List<CellBlock> regions = [];

    private FieldRegions(Grid grid)
    {
        this.grid = grid;
        (isCutEast, isCutNorth) = (new bool[grid.Count], new bool[grid.Count]);
    }

    /// <summary>Finds the rectangles.</summary>
    /// <param name="scene">The house.</param>
    /// <param name="levelIndex">The level.</param>
    /// <param name="grid">Its grid.</param>
    /// <param name="handsZ">Height of the hands above the lowest floor, metres.</param>
    internal static IReadOnlyList<CellBlock> Of(Scene scene, int levelIndex, Grid grid, double handsZ)
    {
        var found = new FieldRegions(grid);
        Level level = scene.House.Levels[levelIndex];
        foreach (Wall wall in level.Walls)
        {
            found.Cut(wall.Start, wall.End);
        }

        IEnumerable<IReadOnlyList<Point2>> outlines = scene.Boxes
            .Where(box => box.VerticalExtent.Low < handsZ && box.VerticalExtent.High > handsZ)
            .Select(box => (IReadOnlyList<Point2>)box.Corners.ToArray())
            .Concat(level.Rooms.Select(room => room.Outline.Corners));
        foreach (IReadOnlyList<Point2> outline in outlines)
        {
            for (int i = 0; i < outline.Count; i++)
            {
                found.Cut(outline[i], outline[(i + 1) % outline.Count]);
            }
        }

        if (grid.Count > 0)
        {
            found.Divide(new CellBlock(0, 0, grid.Columns - 1, grid.Rows - 1));
        }

        return found.regions;
    }

    // Marks the pairs of neighbours that a line separates.
    private void Cut(Point2 start, Point2 end)
    {
        double x1 = ColumnOf(start.X), y1 = RowOf(start.Y), x2 = ColumnOf(end.X), y2 = RowOf(end.Y);
        for (int row = First(y1, y2); row <= Last(y1, y2, grid.Rows) && y1 != y2; row++)
        {
            double column = Math.Floor(x1 + ((row - y1) / (y2 - y1) * (x2 - x1)));
            if (column >= 0 && column < grid.Columns - 1)
            {
                isCutEast[(row * grid.Columns) + (int)column] = true;
            }
        }

        for (int column = First(x1, x2); column <= Last(x1, x2, grid.Columns) && x1 != x2; column++)
        {
            double row = Math.Floor(y1 + ((column - x1) / (x2 - x1) * (y2 - y1)));
            if (row >= 0 && row < grid.Rows - 1)
            {
                isCutNorth[((int)row * grid.Columns) + column] = true;
            }
        }

        static int First(double a, double b) => (int)Math.Max(0, Math.Ceiling(Math.Min(a, b)));

        static int Last(double a, double b, int count) => (int)Math.Min(count - 1, Math.Floor(Math.Max(a, b)));
    }

    // Places on the plan as cells, whole numbers at their centres.
    private double ColumnOf(double x) => ((x - grid.Origin.X) / grid.CellMetres) - 0.5;

    private double RowOf(double y) => ((y - grid.Origin.Y) / grid.CellMetres) - 0.5;

    // Divides a rectangle along the line where most of it is cut, until nothing cuts it.
    private void Divide(CellBlock block)
    {
        double most = 0;
        CellBlock one = default, other = default;
        for (int column = block.West; column < block.East; column++)
        {
            int cuts = 0;
            for (int row = block.South; row <= block.North; row++)
            {
                cuts += isCutEast[(row * grid.Columns) + column] ? 1 : 0;
            }

            if ((double)cuts / (block.Height + 1) > most)
            {
                most = (double)cuts / (block.Height + 1);
                (one, other) = (block with { East = column }, block with { West = column + 1 });
            }
        }

        for (int row = block.South; row < block.North; row++)
        {
            int cuts = 0;
            for (int column = block.West; column <= block.East; column++)
            {
                cuts += isCutNorth[(row * grid.Columns) + column] ? 1 : 0;
            }

            if ((double)cuts / (block.Width + 1) > most)
            {
                most = (double)cuts / (block.Width + 1);
                (one, other) = (block with { North = row }, block with { South = row + 1 });
            }
        }

        if (most == 0)
        {
            regions.Add(block);
            return;
        }

        Divide(one);
        Divide(other);
    }
}

/// <summary>A rectangle of cells, by its outermost columns and rows.</summary>
/// <param name="West">Its first column.</param>
/// <param name="South">Its first row.</param>
/// <param name="East">Its last column.</param>
/// <param name="North">Its last row.</param>
internal readonly record struct CellBlock(int West, int South, int East, int North)
{
    /// <summary>From the first column to the last.</summary>
    internal int Width => East - West;

    /// <summary>From the first row to the last.</summary>
    internal int Height => North - South;

    /// <summary>The column in the middle.</summary>
    internal int MiddleColumn => (West + East) / 2;

    /// <summary>The row in the middle.</summary>
    internal int MiddleRow => (South + North) / 2;

    /// <summary>Its parts on both sides of the row and of the column through a place between cells, or through the middle of one.</summary>
    /// <param name="column">The place, in columns: a whole number at the centre of one.</param>
    /// <param name="row">The same in rows.</param>
    internal IEnumerable<CellBlock> CutAt(double column, double row)
    {
        (int, int)[] columns = Cut(West, East, column), rows = Cut(South, North, row);
        return rows.SelectMany(up => columns.Select(across => new CellBlock(across.Item1, up.Item1, across.Item2, up.Item2)));

        static (int, int)[] Cut(int first, int last, double at) =>
            at >= first && at < last ? [(first, (int)at), ((int)at + 1, last)] : [(first, last)];
    }

    /// <summary>Equal parts of at most a number of steps, which share their outermost columns and rows.</summary>
    /// <param name="mostSteps">Most columns or rows of a part, minus one.</param>
    /// <param name="together">How many of these parts, each way, are taken as one.</param>
    internal IEnumerable<CellBlock> Parts(int mostSteps, int together)
    {
        int across = Math.Max(1, (Width + mostSteps - 1) / mostSteps), up = Math.Max(1, (Height + mostSteps - 1) / mostSteps);
        for (int i = 0; i < up; i += together)
        {
            for (int j = 0; j < across; j += together)
            {
                int east = Math.Min(across, j + together), north = Math.Min(up, i + together);
                yield return new CellBlock(West + (Width * j / across), South + (Height * i / up), West + (Width * east / across), South + (Height * north / up));
            }
        }
    }

    /// <summary>Parts that are no longer than half of that where they lie along one of its sides.</summary>
    /// <param name="mostSteps">Most columns or rows of any other part, minus one.</param>
    internal IEnumerable<CellBlock> PartsFinerAtSides(int mostSteps)
    {
        int[] columns = [.. Ends(West, East, mostSteps)], rows = [.. Ends(South, North, mostSteps)];
        return rows.Zip(rows.Skip(1)).SelectMany(up => columns.Zip(columns.Skip(1)).Select(across => new CellBlock(across.First, up.First, across.Second, up.Second)));

        static IEnumerable<int> Ends(int first, int last, int mostSteps)
        {
            int half = mostSteps / 2, from = Math.Min(first + half, (first + last) / 2), to = Math.Max(last - half, from), parts = (to - from + mostSteps - 1) / mostSteps;
            return [first, .. Enumerable.Range(0, parts + 1).Select(i => from + ((to - from) * i / Math.Max(1, parts))), last];
        }
    }

    /// <summary>Its halves along its longer side, or its quarters where it is about as wide as high.</summary>
    internal IEnumerable<CellBlock> Halves()
    {
        return Halves(Width > 1 && (2 * Width > Height || Height <= 1), Height > 1 && (2 * Height > Width || Width <= 1));
    }

    /// <summary>Its halves along one side or its quarters.</summary>
    internal IEnumerable<CellBlock> Halves(bool isCutAcross, bool isCutUp)
    {
        CellBlock west = isCutAcross ? this with { East = MiddleColumn } : this, east = this with { West = MiddleColumn };
        foreach (CellBlock part in isCutAcross ? [west, east] : new[] { west })
        {
            if (isCutUp)
            {
                yield return part with { North = MiddleRow };
                yield return part with { South = MiddleRow };
            }
            else
            {
                yield return part;
            }
        }
    }
}
