using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Fields;

/// <summary>
/// What all but the slow paths bring at each cell of a level: the straight line, the diffuse field and what bends round edges. For a console
/// that is being moved a cell may also lie between others that are about alike; then it gets their mean.
/// </summary>
/// <param name="spot">The spot.</param>
/// <param name="level">The level.</param>
/// <param name="grid">Its grid.</param>
/// <param name="handsZ">Height of the hands above the lowest floor, metres.</param>
/// <param name="threads">Most threads at once; null: as many as there are processors.</param>
internal sealed class QuickPowers(SpotModel spot, Level level, Grid grid, double handsZ, int? threads)
{
    // Cells on opposite sides of another are about alike where they differ by no more than this, as a ratio: 2.5 dB.
    private static readonly double MostRatio = Decibels.ToPowerRatio(2.5);

    // For each generation, offsets to one of two cells on opposite sides of its cells; those are of the generations before.
    private static readonly (int East, int North)[][] Across = [[], [(1, 1), (1, -1)], [(1, 0), (0, 1)]];

    private readonly PowerParts[] powers = new PowerParts[grid.Count];
    private readonly double[] lossesDb = new double[spot.HasSlowPaths ? 0 : grid.Count];
    private readonly SurfaceAlong[][] surfaces = new SurfaceAlong[grid.Count][];
    private readonly bool[] isIndoors = [.. Enumerable.Range(0, grid.Count).Select(cell => LevelGrid.IsIndoors(level, CentreOf(grid, cell)))];
    private readonly bool[] isKnown = new bool[grid.Count];
    private readonly bool[] isExact = new bool[grid.Count];
    private readonly bool[] isRowKnown = new bool[grid.Rows];

    /// <summary>Power at a cell, if the spot has slow paths.</summary>
    internal PowerParts this[int cell] => powers[cell];

    /// <summary>Loss at a cell, dB, if it has none.</summary>
    internal double LossDb(int cell) => lossesDb[cell];

    /// <summary>Whether a cell lies in a room.</summary>
    internal bool IsIndoors(int cell) => isIndoors[cell];

    /// <summary>The surfaces along an exact cell's straight line, for its reflections.</summary>
    internal ReadOnlySpan<SurfaceAlong> Surfaces(int cell) => surfaces[cell];

    /// <summary>Computes every cell that is not exact yet.</summary>
    internal void ComputeAll(Action? rowDone, CancellationToken cancellation) => ComputeWhere(_ => true, rowDone, cancellation);

    /// <summary>Computes some cells, row by row.</summary>
    /// <param name="isNeeded">Which cells; the others are known.</param>
    /// <param name="rowDone">Called from any thread when all cells of a row are known; null for none.</param>
    /// <param name="cancellation">Stops the work between two rows.</param>
    internal void ComputeWhere(Predicate<int> isNeeded, Action? rowDone, CancellationToken cancellation) => InRows(
        (row, buffer) =>
        {
            for (int cell = row * grid.Columns; cell < (row + 1) * grid.Columns; cell++)
            {
                if (isNeeded(cell))
                {
                    Compute(cell, buffer);
                }
            }

            Done(row, rowDone);
        },
        cancellation);

    /// <summary>Computes some different cells.</summary>
    internal void Compute(int[] cells, CancellationToken cancellation) => CellWork.Each(cells, threads, Compute, cancellation);

    /// <summary>Computes a cell, if it is not exact yet; at one time only one thread may do so.</summary>
    internal void Compute(int cell, TraceBuffer buffer)
    {
        if (isExact[cell])
        {
            return;
        }

        Point2 centre = CentreOf(grid, cell);
        if (isIndoors[cell] && !spot.HasSlowPaths)
        {
            lossesDb[cell] = spot.PathLossDb(centre.At(handsZ), null, buffer);
        }
        else if (isIndoors[cell])
        {
            powers[cell] = spot.PartsWithoutSlow(centre.At(handsZ), buffer);
            surfaces[cell] = buffer.SurfaceCount == 0 ? [] : buffer.Surfaces.ToArray();
        }

        isKnown[cell] = isExact[cell] = true;
    }

    /// <summary>Computes some cells, and others where that is needed to know those between them.</summary>
    /// <param name="regions">Rectangles in rooms, with nothing between their cells.</param>
    /// <param name="exact">Different cells that must be exact.</param>
    /// <param name="rowDone">Called from any thread when all cells of a row are known; null for none.</param>
    /// <param name="cancellation">Stops the work between two cells.</param>
    internal void ComputeRoughly(IReadOnlyList<CellBlock> regions, int[] exact, Action? rowDone, CancellationToken cancellation)
    {
        int[] regionOf = RegionOf(regions);
        Compute(exact, cancellation);
        for (int generation = 0; generation < Across.Length; generation++)
        {
            int now = generation;
            InRows(
                (row, buffer) =>
                {
                    for (int column = 0; column < grid.Columns; column++)
                    {
                        int cell = (row * grid.Columns) + column;
                        if (!isKnown[cell] && GenerationOf(column, row) == now && !TryBetween(column, row, Across[now], regionOf))
                        {
                            Compute(cell, buffer);
                        }
                    }

                    if (now == Across.Length - 1)
                    {
                        Done(row, rowDone);
                    }
                },
                cancellation);
        }
    }

    // 0 for each fourth cell, 1 for those amid four of them, 2 for the rest.
    private static int GenerationOf(int column, int row) => (column + row) % 2 != 0 ? 2 : column % 2;

    // At the end no thread waits for more than one row.
    private void InRows(Action<int, TraceBuffer> each, CancellationToken cancellation) => CellWork.Each([.. Enumerable.Range(0, grid.Rows)], threads, each, cancellation);

    // After an interruption rows are gone through again, but each counts once.
    private void Done(int row, Action? rowDone)
    {
        if (!isRowKnown[row])
        {
            isRowKnown[row] = true;
            rowDone?.Invoke();
        }
    }

    private static Point2 CentreOf(Grid grid, int cell) => grid.CentreOf(cell % grid.Columns, cell / grid.Columns);

    // The mean in decibels of cells on opposite sides, if there are such in the same region and they are about alike.
    private bool TryBetween(int column, int row, (int East, int North)[] across, int[] regionOf)
    {
        if (Math.Min(column, row) < 1 || column + 1 >= grid.Columns || row + 1 >= grid.Rows)
        {
            return false;
        }

        int cell = (row * grid.Columns) + column, pairs = 0;
        double product = 1, least = double.PositiveInfinity, greatest = 0;
        foreach ((int east, int north) in across)
        {
            int step = (north * grid.Columns) + east, one = cell + step, other = cell - step;
            if (regionOf[cell] < 0 || regionOf[one] != regionOf[cell] || regionOf[other] != regionOf[cell])
            {
                continue;
            }

            pairs++;
            double first = powers[one].Sum, second = powers[other].Sum;
            product *= Math.Sqrt(first * second);
            least = Math.Min(least, Math.Min(first, second));
            greatest = Math.Max(greatest, Math.Max(first, second));
        }

        if (pairs == 0 || !(greatest <= MostRatio * least))
        {
            return false;
        }

        powers[cell] = new PowerParts(pairs == 1 ? product : Math.Sqrt(product), 0);
        isKnown[cell] = true;
        return true;
    }

    private int[] RegionOf(IReadOnlyList<CellBlock> regions)
    {
        int[] regionOf = new int[grid.Count];
        Array.Fill(regionOf, -1);
        for (int i = 0; i < regions.Count; i++)
        {
            for (int row = regions[i].South; row <= regions[i].North; row++)
            {
                regionOf.AsSpan((row * grid.Columns) + regions[i].West, regions[i].Width + 1).Fill(i);
            }
        }

        return regionOf;
    }
}
