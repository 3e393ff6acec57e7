using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Fields;

/// <summary>What the slow paths, reflections, bring at the cells of a level where they are traced.</summary>
/// <param name="spot">The spot.</param>
/// <param name="grid">The level's grid.</param>
/// <param name="handsZ">Height of the hands above the lowest floor, metres.</param>
/// <param name="quick">What all other paths bring; at a cell that is traced it must be exact.</param>
/// <param name="threads">Most threads at once; null: as many as there are processors.</param>
internal sealed class SlowPowers(SpotModel spot, Grid grid, double handsZ, QuickPowers quick, int? threads) : INodePowers
{
    // While a console is being moved, a reflection that adds less than this share of the paths that always count is dropped: 0.11 dB.
    private const double RoughShare = 0.025;

    private readonly QuickPowers quick = quick;
    private readonly double[] powers = [.. Enumerable.Repeat(double.NaN, grid.Count)];
    private readonly int[]?[] mirrors = new int[]?[grid.Count]; // that count at a cell where all were tried
    private readonly bool[] isRough = new bool[grid.Count]; // cells traced without weak reflections

    /// <summary>Power at a cell; NaN where it is not traced.</summary>
    internal double this[int cell] => powers[cell];

    /// <inheritdoc/>
    double INodePowers.At(int cell) => powers[cell];

    /// <inheritdoc/>
    double INodePowers.Beside(int cell) => quick[cell].Sum;

    /// <inheritdoc/>
    int[]? INodePowers.MirrorsAt(int[] cells) => [.. cells.SelectMany(cell => mirrors[cell] ?? []).Distinct().Order()];

    /// <inheritdoc/>
    void INodePowers.Compute(OpenCell[] cells, CancellationToken cancellation) => Trace(cells, isRoughly: false, cancellation);

    /// <summary>The same without weak reflections.</summary>
    internal INodePowers Roughly => new Rough(this);

    /// <summary>Traces cells with all mirrors, where that is not done yet.</summary>
    internal void TraceFully(IEnumerable<int> cells, CancellationToken cancellation) => CellWork.Each(
        [.. cells.Where(cell => quick.IsIndoors(cell) && (mirrors[cell] is null || isRough[cell]))],
        threads,
        (cell, buffer) => Trace(new OpenCell(cell, null), buffer, isRoughly: false),
        cancellation);

    // Traces cells where none are traced yet, or only roughly.
    private void Trace(IEnumerable<OpenCell> cells, bool isRoughly, CancellationToken cancellation)
    {
        OpenCell[] wanted = [.. cells.Where(one => double.IsNaN(powers[one.Cell]) || (isRough[one.Cell] && !isRoughly))];
        CellWork.Each([.. Enumerable.Range(0, wanted.Length)], threads, (i, buffer) => Trace(wanted[i], buffer, isRoughly), cancellation);
    }

    private void Trace(OpenCell one, TraceBuffer buffer, bool isRoughly)
    {
        int cell = one.Cell;
        List<int> counting = [];
        Point3 hands = grid.CentreOf(cell % grid.Columns, cell / grid.Columns).At(handsZ);
        quick.Compute(cell, buffer);
        buffer.SetSurfaces(quick.Surfaces(cell));
        double least = quick[cell].Always * (isRoughly ? RoughShare : PathFinder.LeastShare);
        powers[cell] = spot.SlowPower(hands, least, one.Mirrors, counting, buffer);
        isRough[cell] = isRoughly;
        mirrors[cell] = one.Mirrors is null ? [.. counting] : null;
    }

    private sealed class Rough(SlowPowers powers) : INodePowers
    {
        double INodePowers.At(int cell) => powers[cell];

        double INodePowers.Beside(int cell) => powers.quick[cell].Sum;

        void INodePowers.Compute(OpenCell[] cells, CancellationToken cancellation) => powers.Trace(cells, isRoughly: true, cancellation);

        int[]? INodePowers.MirrorsAt(int[] cells) => ((INodePowers)powers).MirrorsAt(cells);
    }
}
