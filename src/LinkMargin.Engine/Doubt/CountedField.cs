using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;

namespace LinkMargin.Engine.Doubt;

/// <summary>
/// The margin to count on over a level. What parts it from the plain margin changes slowly within a room, so it is drawn at
/// cells half a metre apart and carried over between them, never through a wall of a room (weights of Franke and Little:
/// exact at those cells, smooth between).
/// </summary>
public static class CountedField
{
    private const double ApartMetres = 0.5;
    private const double ReachInSteps = 2.2;

    /// <summary>Takes off a field what makes it the margin to count on.</summary>
    /// <param name="model">The house, ready.</param>
    /// <param name="field">The margin at the tables' losses.</param>
    /// <param name="basis">How far figures may be out.</param>
    /// <param name="confidence">How often a margin that is counted on is exceeded, above 0 and below 1.</param>
    public static Field Of(LinkModel model, Field field, DoubtBasis basis, double confidence)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(basis);
        Grid grid = field.Grid;
        Level level = model.House.Levels[field.LevelIndex];
        int step = Math.Max(1, (int)Math.Round(ApartMetres / grid.CellMetres));
        (int Cell, int Room)[] nodes = [.. Nodes(field, level, step)];
        Point3[] hands = [.. nodes.Select(node => CentreOf(grid, node.Cell).At(level.ElevationMetres + field.HandsMetres))];
        var stored = StoredPaths.Of(model, field.Spot, hands);
        var draws = new LinkDraws(stored, model.Radios, basis);
        double[] cushion = new double[nodes.Length];
        Parallel.For(0, nodes.Length, i => cushion[i] = draws.Of(stored.Links[i]).ExceededDb(confidence) - field.MarginDb[nodes[i].Cell]);
        return field with { MarginDb = Spread(field, level, nodes, cushion, step) };
    }

    private static double[] Spread(Field field, Level level, (int Cell, int Room)[] nodes, double[] cushion, int step)
    {
        Grid grid = field.Grid;
        var byRoom = nodes.Select((node, i) => (node.Room, Place: CentreOf(grid, node.Cell), Cushion: cushion[i])).ToLookup(node => node.Room);
        double reach = ReachInSteps * step * grid.CellMetres;
        double[] counted = [.. field.MarginDb];
        Parallel.For(0, grid.Rows, row =>
        {
            for (int cell = row * grid.Columns; cell < (row + 1) * grid.Columns; cell++)
            {
                if (double.IsNaN(counted[cell]))
                {
                    continue;
                }

                Point2 here = CentreOf(grid, cell);
                double sum = 0, weights = 0, nearest = double.PositiveInfinity, ofNearest = 0;
                foreach ((_, Point2 place, double db) in byRoom[RoomAt(level, here)])
                {
                    double distance = place.DistanceTo(here);
                    if (distance < nearest)
                    {
                        (nearest, ofNearest) = (distance, db);
                    }

                    if (distance > 0 && distance < reach)
                    {
                        double weight = (reach - distance) / (reach * distance);
                        sum += weight * weight * db;
                        weights += weight * weight;
                    }
                }

                counted[cell] += nearest > 0 && weights > 0 ? sum / weights : ofNearest;
            }
        });
        return counted;
    }

    // A lattice of the grid's own cells; a room that it misses gets the first of its cells.
    private static IEnumerable<(int Cell, int Room)> Nodes(Field field, Level level, int step)
    {
        Grid grid = field.Grid;
        Dictionary<int, int> first = [];
        HashSet<int> met = [];
        for (int cell = 0; cell < grid.Count; cell++)
        {
            if (double.IsNaN(field.MarginDb[cell]))
            {
                continue;
            }

            int room = RoomAt(level, CentreOf(grid, cell));
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

    private static Point2 CentreOf(Grid grid, int cell) => grid.CentreOf(cell % grid.Columns, cell / grid.Columns);

    private static int RoomAt(Level level, Point2 place)
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
