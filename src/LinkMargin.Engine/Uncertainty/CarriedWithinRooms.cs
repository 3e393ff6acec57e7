using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// Figures known at some cells of a level, interpolated to the cells between them within each room, never through its walls
/// (weights of Franke and Little: exact at the known cells, smooth between).
/// </summary>
internal sealed class CarriedWithinRooms
{
    private const double ReachInSteps = 2.2;

    private readonly Grid grid;
    private readonly Level level;
    private readonly double reachMetres;
    private readonly ILookup<int, int> byRoom; // indices into Cells

    /// <summary>Chooses the known cells: a lattice of the grid's own cells, and the first cell of each room that the lattice misses.</summary>
    /// <param name="level">The level.</param>
    /// <param name="grid">Its grid.</param>
    /// <param name="isComputed">Whether a cell has a figure at all.</param>
    /// <param name="apartMetres">From one known cell to the next, metres; at least one cell.</param>
    internal CarriedWithinRooms(Level level, Grid grid, Func<int, bool> isComputed, double apartMetres)
    {
        (this.level, this.grid) = (level, grid);
        int step = Math.Max(1, (int)Math.Round(apartMetres / grid.CellMetres));
        reachMetres = ReachInSteps * step * grid.CellMetres;
        (int Cell, int Room)[] known = [.. Known(isComputed, step)];
        Cells = [.. known.Select(one => one.Cell)];
        byRoom = Enumerable.Range(0, known.Length).ToLookup(i => known[i].Room);
    }

    /// <summary>The known cells.</summary>
    internal IReadOnlyList<int> Cells { get; }

    /// <summary>The centre of a cell.</summary>
    internal Point2 CentreOf(int cell) => grid.CentreOf(cell % grid.Columns, cell / grid.Columns);

    /// <summary>The figure at a cell as a weighted mean of known ones: their indices in <see cref="Cells"/> and weights, which sum to 1.</summary>
    internal (int Known, double Weight)[] WeightsAt(int cell)
    {
        Point2 here = CentreOf(cell);
        List<(int Known, double Weight)> weights = [];
        double sum = 0, nearest = double.PositiveInfinity;
        int ofNearest = 0;
        foreach (int known in byRoom[RoomAt(here)])
        {
            double distance = CentreOf(Cells[known]).DistanceTo(here);
            if (distance < nearest)
            {
                (nearest, ofNearest) = (distance, known);
            }

            if (distance > 0 && distance < reachMetres)
            {
                double weight = (reachMetres - distance) / (reachMetres * distance);
                weights.Add((known, weight * weight));
                sum += weight * weight;
            }
        }

        return nearest > 0 && sum > 0 ? [.. weights.Select(one => (one.Known, one.Weight / sum))] : [(ofNearest, 1)];
    }

    private IEnumerable<(int Cell, int Room)> Known(Func<int, bool> isComputed, int step)
    {
        Dictionary<int, int> first = [];
        HashSet<int> met = [];
        for (int cell = 0; cell < grid.Count; cell++)
        {
            if (!isComputed(cell))
            {
                continue;
            }

            int room = RoomAt(CentreOf(cell));
            first.TryAdd(room, cell);
            if (cell % grid.Columns % step == step / 2 && cell / grid.Columns % step == step / 2)
            {
                met.Add(room);
                yield return (cell, room);
            }
        }

        foreach ((int room, int cell) in first.Where(pair => !met.Contains(pair.Key)))
        {
            yield return (cell, room);
        }
    }

    private int RoomAt(Point2 place)
    {
        for (int room = 0; room < level.Rooms.Count; room++)
        {
            if (level.Rooms[room].Outline.Contains(place))
            {
                return room;
            }
        }

        return -1;
    }
}
