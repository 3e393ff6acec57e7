using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Building;

namespace LinkMargin.Plots.Contours;

/// <summary>
/// Smooths away small islands of a surface: patches above or below a contour line that are smaller than
/// <see cref="LeastSquareMetres"/>, border on that line and hold no seat or spot. They decide nothing and hide more important lines.
/// A wall or a closed door separates patches, an open door does not.
/// </summary>
public sealed class ContourIslands
{
    /// <summary>Smallest area of a patch that is drawn, square metres.</summary>
    public const double LeastSquareMetres = 0.3;

    // Just below a line, by far less than is visible.
    private const double JustBelowDb = 1e-6;

    private readonly FieldSurface surface;
    private readonly double[] values;
    private readonly bool[] toEast;
    private readonly bool[] toNorth;
    private readonly HashSet<int> kept = [];

    private ContourIslands(FieldSurface surface, Level level, IEnumerable<Point2> places)
    {
        this.surface = surface;
        int columns = surface.Columns, rows = surface.Rows;
        values = new double[columns * rows];
        (toEast, toNorth) = (new bool[values.Length], new bool[values.Length]);
        Wall[] walls = [.. level.Walls.Where(wall => WallShape.ClosesStorey(level, wall))];
        for (int node = 0; node < values.Length; node++)
        {
            values[node] = surface.AtNode(node % columns, node / columns);
            toEast[node] = node % columns + 1 < columns && IsOpen(node, node + 1, walls);
            toNorth[node] = node / columns + 1 < rows && IsOpen(node, node + columns, walls);
        }

        foreach (Point2 place in places)
        {
            int column = (int)Math.Floor(((place.X - surface.Grid.Origin.X) / surface.Grid.CellMetres) + 0.5);
            int row = (int)Math.Floor(((place.Y - surface.Grid.Origin.Y) / surface.Grid.CellMetres) + 0.5);
            if (column >= 0 && row >= 0 && column + 1 < columns && row + 1 < rows)
            {
                int node = (row * columns) + column;
                kept.UnionWith([node, node + 1, node + columns, node + columns + 1]);
            }
        }
    }

    /// <summary>A surface without its islands.</summary>
    /// <param name="surface">The surface.</param>
    /// <param name="level">Its level.</param>
    /// <param name="lines">The contour lines, dB, in any order.</param>
    /// <param name="places">Seats and spots: an island under one is kept.</param>
    internal static FieldSurface Smoothed(FieldSurface surface, Level level, IEnumerable<double> lines, IEnumerable<Point2> places)
    {
        double[] ascending = [.. lines.Distinct().Order()];
        var islands = new ContourIslands(surface, level, places);
        foreach (double line in ascending)
        {
            islands.Level(line, above: true);
        }

        foreach (double line in ascending.Reverse())
        {
            islands.Level(line, above: false);
        }

        return surface.With(islands.values);
    }

    private bool IsCell(int node) => surface.RoomOfNode(node) >= 0;

    private bool IsOpen(int from, int to, Wall[] walls)
    {
        if (!IsCell(from) || !IsCell(to))
        {
            return false;
        }

        if (surface.RoomOfNode(from) == surface.RoomOfNode(to))
        {
            return true;
        }

        Point2 a = surface.NodePosition(from % surface.Columns, from / surface.Columns);
        Point2 b = surface.NodePosition(to % surface.Columns, to / surface.Columns);
        return !walls.Any(wall => Stops(wall, a, b));
    }

    private static bool Stops(Wall wall, Point2 a, Point2 b)
    {
        Point2 along = wall.End - wall.Start, step = b - a;
        double cross = Point2.Cross(along, step);
        if (cross == 0)
        {
            return false;
        }

        double onWall = Point2.Cross(a - wall.Start, step) / cross, onStep = Point2.Cross(a - wall.Start, along) / cross;
        double metres = onWall * wall.LengthMetres;
        return onWall is >= 0 and <= 1
            && onStep is >= 0 and <= 1
            && !wall.Openings.Any(o => o.Filling is null && metres >= o.OffsetMetres && metres <= o.OffsetMetres + o.WidthMetres);
    }

    // Sets small patches on one side of a line to the value of that line.
    private void Level(double line, bool above)
    {
        int columns = surface.Columns;
        bool[] seen = new bool[values.Length];
        var next = new Stack<int>();
        var patch = new List<int>();
        double most = LeastSquareMetres / (surface.Grid.CellMetres * surface.Grid.CellMetres);
        for (int first = 0; first < values.Length; first++)
        {
            if (seen[first] || !IsCell(first) || values[first] >= line != above)
            {
                continue;
            }

            bool endsAtLine = false, isKept = false;
            patch.Clear();
            seen[first] = true;
            next.Push(first);
            while (next.TryPop(out int node))
            {
                patch.Add(node);
                isKept |= kept.Contains(node);
                Visit(toEast[node], node + 1);
                Visit(node % columns > 0 && toEast[node - 1], node - 1);
                Visit(toNorth[node], node + columns);
                Visit(node >= columns && toNorth[node - columns], node - columns);
            }

            if (endsAtLine && !isKept && patch.Count < most)
            {
                foreach (int node in patch)
                {
                    values[node] = above ? line - JustBelowDb : line;
                }
            }

            void Visit(bool isOpen, int node)
            {
                if (!isOpen)
                {
                    return;
                }

                if (values[node] >= line != above)
                {
                    endsAtLine = true;
                }
                else if (!seen[node])
                {
                    seen[node] = true;
                    next.Push(node);
                }
            }
        }
    }
}
