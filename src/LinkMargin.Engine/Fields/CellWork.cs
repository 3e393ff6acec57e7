using System.Collections.Concurrent;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Fields;

/// <summary>Work on the cells of a field by several threads.</summary>
internal static class CellWork
{
    /// <summary>Does something with each number, one by one, on whichever thread is free: some cells take several times as long as others.</summary>
    /// <param name="numbers">Numbers of cells, or of rows.</param>
    /// <param name="threads">Most threads at once; null: as many as there are processors.</param>
    /// <param name="each">What to do, with a buffer of the thread's own.</param>
    /// <param name="cancellation">Stops the work between two numbers.</param>
    internal static void Each(int[] numbers, int? threads, Action<int, TraceBuffer> each, CancellationToken cancellation)
    {
        var options = new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = threads ?? Environment.ProcessorCount };
        OrderablePartitioner<int> one = Partitioner.Create(numbers, EnumerablePartitionerOptions.NoBuffering);
        Parallel.ForEach(one, options, () => new TraceBuffer(), (number, _, buffer) =>
        {
            each(number, buffer);
            return buffer;
        }, _ => { });
    }
}
