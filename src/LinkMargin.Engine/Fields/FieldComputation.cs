using System.Collections.Concurrent;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Fields;

/// <summary>Computes fields, rows in parallel. Each cell writes only its own place, so threads never change a bit.</summary>
public static class FieldComputation
{
    /// <summary>The margin at the centre of every cell of a level that lies in a room.</summary>
    /// <param name="model">The house, ready.</param>
    /// <param name="request">What is wanted.</param>
    /// <param name="rowDone">Called from any thread when a row is done; null for none.</param>
    /// <param name="cancellation">Stops the work between rows.</param>
    public static Field Compute(
        LinkModel model, FieldRequest request, Action? rowDone = null, CancellationToken cancellation = default)
    {
        Level level = model.House.Levels[request.LevelIndex];
        Grid grid = LevelGrid.Over(level, request.CellMetres);
        SpotModel spot = model.For(request.Spot).ForMany();
        double handsZ = level.ElevationMetres + request.HandsMetres;
        double greatestLossDb = model.Radios.GreatestLossDb;
        double[] marginDb = new double[grid.Count];
        var options = new ParallelOptions
        {
            CancellationToken = cancellation,
            MaxDegreeOfParallelism = request.Threads ?? Environment.ProcessorCount,
        };

        // Row by row to whichever thread is free: rows through many rooms take several times as long as others, and at the end
        // nobody waits for more than one.
        OrderablePartitioner<int> rows = Partitioner.Create(Enumerable.Range(0, grid.Rows), EnumerablePartitionerOptions.NoBuffering);
        Parallel.ForEach(rows, options, () => new TraceBuffer(), ComputeRow, _ => { });
        return new Field(request.Spot, request.LevelIndex, request.HandsMetres, grid, marginDb);

        TraceBuffer ComputeRow(int row, ParallelLoopState state, TraceBuffer buffer)
        {
            for (int column = 0; column < grid.Columns; column++)
            {
                Point2 centre = grid.CentreOf(column, row);
                marginDb[(row * grid.Columns) + column] = LevelGrid.IsIndoors(level, centre)
                    ? greatestLossDb - spot.PathLossDb(centre.At(handsZ), null, buffer)
                    : double.NaN;
            }

            rowDone?.Invoke();
            return buffer;
        }
    }
}

/// <summary>The margin over one level for one spot.</summary>
/// <param name="Spot">Where the console stands.</param>
/// <param name="LevelIndex">The level the hands are on; 0 is the lowest.</param>
/// <param name="HandsMetres">Height of the hands above that level's floor, metres.</param>
/// <param name="Grid">The cells.</param>
/// <param name="MarginDb">Margin at each cell's centre, dB, in the grid's order; NaN = not computed (outside every room).</param>
public sealed record Field(Spot Spot, int LevelIndex, double HandsMetres, Grid Grid, IReadOnlyList<double> MarginDb);

/// <summary>What field is wanted.</summary>
/// <param name="Spot">Where the console stands.</param>
/// <param name="LevelIndex">The level the hands are on; 0 is the lowest.</param>
public sealed record FieldRequest(Spot Spot, int LevelIndex)
{
    /// <summary>Hands of somebody on a sofa, metres above the floor: common practice.</summary>
    public const double SofaHandsMetres = 0.7;

    /// <summary>Side of a cell by default, metres: finer than a wavelength, so nothing a map could show is lost.</summary>
    public const double DefaultCellMetres = 0.1;

    /// <summary>Side of a cell, metres, above 0.</summary>
    public double CellMetres { get; init; } = DefaultCellMetres;

    /// <summary>Height of the hands above the level's floor, metres.</summary>
    public double HandsMetres { get; init; } = SofaHandsMetres;

    /// <summary>How many threads may work at once; every number gives the same bits. Null: as many as there are processors.</summary>
    public int? Threads { get; init; }
}
