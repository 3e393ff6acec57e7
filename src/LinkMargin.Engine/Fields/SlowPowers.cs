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
internal sealed class SlowPowers(SpotModel spot, Grid grid, double handsZ, QuickPowers quick, int? threads)
{
    // While a console is being moved, a reflection that adds less than this share of the paths that always count is dropped: 0.11 dB.
    private const double RoughShare = 0.025;

    private readonly double[] powers = [.. Enumerable.Repeat(double.NaN, grid.Count)];
    private readonly int[]?[] mirrors = new int[]?[grid.Count]; // that count at a cell where all were tried
    private readonly bool[] isRough = new bool[grid.Count]; // cells traced without weak reflections

    /// <summary>Power at a cell; NaN where it is not traced.</summary>
    internal double this[int cell] => powers[cell];

    /// <summary>The mirrors that count at a cell where all were tried; none elsewhere.</summary>
    internal int[] MirrorsAt(int cell) => mirrors[cell] ?? [];

    /// <summary>Traces cells where none are traced yet, or only roughly, with the mirrors of the first block that needs a cell.</summary>
    internal void Trace(IEnumerable<OpenCell> cells, CancellationToken cancellation, bool isRoughly = false)
    {
        OpenCell[] wanted = [.. cells
            .Where(one => double.IsNaN(powers[one.Cell]) || (isRough[one.Cell] && !isRoughly))
            .DistinctBy(one => one.Cell)];
        CellWork.Each([.. Enumerable.Range(0, wanted.Length)], threads, (i, buffer) => Trace(wanted[i], buffer, isRoughly), cancellation);
    }

    /// <summary>Traces all cells that have not been traced with all mirrors.</summary>
    internal void TraceAll(CancellationToken cancellation) => CellWork.Each(
        [.. Enumerable.Range(0, grid.Count).Where(cell => quick.IsIndoors(cell) && mirrors[cell] is null)],
        threads,
        (cell, buffer) => Trace(new OpenCell(cell, null), buffer, isRoughly: false),
        cancellation);

    private void Trace(OpenCell one, TraceBuffer buffer, bool isRoughly)
    {
        int cell = one.Cell;
        List<int> counting = [];
        Point3 hands = grid.CentreOf(cell % grid.Columns, cell / grid.Columns).At(handsZ);
        buffer.SetSurfaces(quick.Surfaces(cell));
        double least = quick[cell].Always * (isRoughly ? RoughShare : PathFinder.LeastShare);
        powers[cell] = spot.SlowPower(hands, least, one.Mirrors, counting, buffer);
        isRough[cell] = isRoughly;
        mirrors[cell] = one.Mirrors is null && !isRoughly ? [.. counting] : null;
    }
}

/// <summary>A cell to be traced.</summary>
/// <param name="Cell">Its number.</param>
/// <param name="Mirrors">The only mirrors to try; null for all.</param>
internal readonly record struct OpenCell(int Cell, int[]? Mirrors);
