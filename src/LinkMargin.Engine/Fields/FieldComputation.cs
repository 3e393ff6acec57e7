using System.Collections.Concurrent;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Fields;

/// <summary>Computes fields, rows in parallel. Each cell writes only its own place, so threads never change a bit.</summary>
public static class FieldComputation
{
    /// <summary>The same by the straight line alone.</summary>
    public static Field Compute(
        Scene scene, FieldRequest request, Action? rowDone = null, CancellationToken cancellation = default) =>
        Compute(new LinkModel(scene, ModelDepth.Direct), request, rowDone, cancellation);

    /// <summary>The margin at the centre of every cell of a level that lies in a room.</summary>
    /// <param name="model">The house, ready.</param>
    /// <param name="request">What is wanted.</param>
    /// <param name="rowDone">Called from any thread when a row is done; null to hear nothing.</param>
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
