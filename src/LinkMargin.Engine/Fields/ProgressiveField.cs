using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;

namespace LinkMargin.Engine.Fields;

/// <summary>
/// A field that is coarse first and refined in place. It may be stopped at any moment and continued later: each figure depends only on its
/// position, so the result of a stage has the same bits whatever the interruptions and the number of threads.
/// <para>
/// The straight line, the diffuse field and diffracted paths are computed at every cell. Reflections take most of the time and vary slowly;
/// they are traced at the corners of blocks of at most <see cref="LargestBlockMetres"/> and interpolated between them, never
/// through a wall, a door's plane or a side of a fixture (<see cref="FieldRegions"/>). A block is halved where its middle shows that the
/// interpolation is off, or its corners differ too much, down to single cells. Within a block that has been examined, only mirrors
/// that counted at one of its corners or in its middle are tried again. While a console is being moved, the other paths too are computed only
/// where cells around differ (<see cref="QuickPowers"/>).
/// </para>
/// </summary>
public sealed class ProgressiveField
{
    /// <summary>Longest side of a block over which reflections are interpolated, metres.</summary>
    public const double LargestBlockMetres = 0.8;

    // The first stage takes this many of these blocks, each way, as one.
    private const int CoarseBlocks = 2;

    // A block no longer than this is judged by its corners, metres.
    private const double SmallBlockMetres = 0.2;

    // Greatest error in the middle of a block, and greatest difference of corners in a small block and in any, dB of the margin.
    private const double MiddleDb = 0.2;
    private const double SmallCornersDb = 0.3;
    private const double CornersDb = 2;

    // Where reflections bring less than this share of the power, their error is at most 0.09 dB.
    private const double LeastShare = 0.02;

    private readonly FieldRequest request;
    private readonly Grid grid;
    private readonly SpotModel spot;
    private readonly IReadOnlyList<CellBlock> regions;
    private readonly double greatestLossDb;
    private readonly int largestSteps;
    private readonly int smallSteps;
    private readonly QuickPowers quick; // by all but the slow paths
    private readonly SlowPowers slow; // by the slow ones, where they are traced
    private readonly int[] blockOf; // the interpolated block of each cell that has one, or -1
    private readonly List<CarriedBlock> carried = [];

    /// <summary>Prepares a field; computes only what all cells of the spot share.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="request">What is wanted.</param>
    public ProgressiveField(LinkModel model, FieldRequest request)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(request);
        this.request = request;
        Level level = model.House.Levels[request.LevelIndex];
        grid = LevelGrid.Over(level, request.CellMetres);
        spot = model.For(request.Spot).ForMany();
        double handsZ = level.ElevationMetres + request.HandsMetres;
        greatestLossDb = model.RadiosAt(request.Spot).GreatestLossDb;
        largestSteps = Math.Max(1, (int)Math.Round(LargestBlockMetres / request.CellMetres));
        smallSteps = Math.Max(1, (int)Math.Round(SmallBlockMetres / request.CellMetres));
        regions = spot.HasSlowPaths
            ? [.. FieldRegions.Of(model.Scene, request.LevelIndex, grid, handsZ).Where(region => LevelGrid.IsIndoors(level, grid.CentreOf(region.West, region.South)))]
            : [];
        quick = new QuickPowers(spot, level, grid, handsZ, request.Threads);
        slow = new SlowPowers(spot, grid, handsZ, quick, request.Threads);
        blockOf = new int[grid.Count];
        Array.Fill(blockOf, -1);
    }

    /// <summary>The last stage that is complete; null before the first.</summary>
    public FieldStage? Reached { get; private set; }

    // The stage it begins with.
    private FieldStage? First { get; set; }

    /// <summary>
    /// Continues until a stage is complete, or until it is stopped. It begins with the first stage requested and skips those before.
    /// </summary>
    /// <param name="to">The stage.</param>
    /// <param name="rowDone">Called from any thread when the cells of a row are first known; null for none.</param>
    /// <param name="cancellation">Stops the work between two cells; what is done stays done.</param>
    /// <returns>Whether the stage is complete; otherwise call it again.</returns>
    public bool Advance(FieldStage to, Action? rowDone = null, CancellationToken cancellation = default)
    {
        First ??= to;
        try
        {
            while (Reached is null || Reached < to)
            {
                Complete(Reached is null ? First.Value : Reached.Value + 1, rowDone, cancellation);
            }

            return true;
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            return false;
        }
    }

    /// <summary>The field by the last complete stage.</summary>
    /// <exception cref="InvalidOperationException">No stage is complete yet.</exception>
    public Field Current()
    {
        if (Reached is null)
        {
            throw new InvalidOperationException("Advance to FieldStage.Coarse first.");
        }

        double[] marginDb = new double[grid.Count];
        for (int cell = 0; cell < marginDb.Length; cell++)
        {
            marginDb[cell] = quick.IsIndoors(cell) ? greatestLossDb - LossDb(cell) : double.NaN;
        }

        return new Field(request.Spot, request.LevelIndex, request.HandsMetres, grid, marginDb) { Stage = spot.HasSlowPaths ? Reached.Value : FieldStage.Exact };
    }

    private double LossDb(int cell)
    {
        if (!spot.HasSlowPaths)
        {
            return quick.LossDb(cell);
        }

        return PathLoss.FromPowerRatio(quick[cell].With(
            !double.IsNaN(slow[cell]) ? slow[cell]
            : blockOf[cell] >= 0 ? carried[blockOf[cell]].At(cell % grid.Columns, cell / grid.Columns)
            : 0));
    }

    private void Complete(FieldStage stage, Action? rowDone, CancellationToken cancellation)
    {
        Action? knownFirst = stage == First ? rowDone : null;
        if (stage == FieldStage.Coarse && spot.HasSlowPaths)
        {
            quick.ComputeRoughly(regions, Blocks(CoarseBlocks).SelectMany(CornersOf), knownFirst, cancellation);
        }
        else
        {
            quick.ComputeAll(knownFirst, cancellation);
        }

        if (spot.HasSlowPaths)
        {
            Trace(stage, cancellation);
        }

        Reached = stage;
    }

    private void Trace(FieldStage stage, CancellationToken cancellation)
    {
        switch (stage)
        {
            case FieldStage.Coarse:
                List<CellBlock> blocks = Blocks(CoarseBlocks);
                slow.Trace(blocks.SelectMany(block => WithMirrors(CornersOf(block), null)), cancellation, isRoughly: true);
                foreach (CellBlock block in blocks)
                {
                    Keep(block, Corners(block), carried, blockOf);
                }

                break;
            case FieldStage.Map:
                Refine(cancellation);
                break;
            default:
                slow.TraceAll(cancellation);
                break;
        }
    }

    // One generation of blocks after the other: the cells it needs are traced, then each block is kept or halved. If stopped and called
    // again, it starts with the first generation, whose cells are traced already.
    private void Refine(CancellationToken cancellation)
    {
        List<OpenBlock> generation = Blocks(1).ConvertAll(block => new OpenBlock(block, null));
        var kept = new List<CarriedBlock>();
        int[] keptOf = [.. Enumerable.Repeat(-1, grid.Count)];
        while (generation.Count > 0)
        {
            slow.Trace(generation.SelectMany(one => WithMirrors(CornersOf(one.Block), one.Mirrors)), cancellation);
            slow.Trace(
                generation.Where(one => IsLarge(one.Block) && ShareAtCorners(one.Block) >= LeastShare)
                    .SelectMany(one => WithMirrors([MiddleOf(one.Block)], one.Mirrors)),
                cancellation);
            List<OpenBlock> next = [];
            foreach ((CellBlock block, int[]? ofBlock) in generation)
            {
                if (Judge(block) is { } good)
                {
                    Keep(block, good, kept, keptOf);
                }
                else if (block.Width > 1 || block.Height > 1)
                {
                    int[] tried = ofBlock ?? [.. CornersOf(block).Append(MiddleOf(block)).SelectMany(slow.MirrorsAt).Distinct().Order()];
                    next.AddRange(block.Halves().Select(half => new OpenBlock(half, tried)));
                }
            }

            generation = next;
        }

        carried.Clear();
        carried.AddRange(kept);
        keptOf.CopyTo(blockOf, 0);
    }

    // The corners of larger blocks are corners of smaller ones, so each stage reuses what the one before traced.
    private List<CellBlock> Blocks(int together) =>
        [.. regions.SelectMany(region => region.Parts(largestSteps, together))];

    // The interpolated block; null where it must be halved, or has only corners.
    private CarriedBlock? Judge(CellBlock block)
    {
        if (block.Width <= 1 && block.Height <= 1)
        {
            return null;
        }

        CarriedBlock corners = Corners(block);
        if (ShareAtCorners(block) < LeastShare)
        {
            return corners;
        }

        double rest = CornersOf(block).Min(cell => quick[cell].Sum);
        if (!IsLarge(block))
        {
            return Apart(rest, corners.Greatest, corners.Least) <= SmallCornersDb ? corners : null;
        }

        int middle = MiddleOf(block);
        return Apart(quick[middle].Sum, corners.At(block.MiddleColumn, block.MiddleRow), slow[middle]) <= MiddleDb
            && Apart(rest, corners.Greatest, corners.Least) <= CornersDb
            ? corners.WithMiddle(slow[middle])
            : null;
    }

    private static double Apart(double rest, double one, double other) =>
        rest + Math.Min(one, other) > 0 ? Math.Abs(10 * Math.Log10((rest + one) / (rest + other))) : one == other ? 0 : double.PositiveInfinity;

    private bool IsLarge(CellBlock block) => block.Width > smallSteps || block.Height > smallSteps;

    private double ShareAtCorners(CellBlock block) => CornersOf(block).Max(cell => slow[cell] > 0 ? slow[cell] / quick[cell].With(slow[cell]) : 0);

    private void Keep(CellBlock block, in CarriedBlock good, List<CarriedBlock> kept, int[] keptOf)
    {
        for (int row = block.South; row <= block.North; row++)
        {
            keptOf.AsSpan(CellOf(block.West, row), block.Width + 1).Fill(kept.Count);
        }

        kept.Add(good);
    }

    private CarriedBlock Corners(CellBlock block) => new(
        block,
        slow[CellOf(block.West, block.South)],
        slow[CellOf(block.East, block.South)],
        slow[CellOf(block.West, block.North)],
        slow[CellOf(block.East, block.North)]);

    private int[] CornersOf(CellBlock block) =>
        [CellOf(block.West, block.South), CellOf(block.East, block.South), CellOf(block.West, block.North), CellOf(block.East, block.North)];

    private int MiddleOf(CellBlock block) => CellOf(block.MiddleColumn, block.MiddleRow);

    private int CellOf(int column, int row) => (row * grid.Columns) + column;

    private static IEnumerable<OpenCell> WithMirrors(IEnumerable<int> cells, int[]? mirrors) => cells.Select(cell => new OpenCell(cell, mirrors));

    // A block to be examined, and the only mirrors to try in it; null for all.
    private readonly record struct OpenBlock(CellBlock Block, int[]? Mirrors);
}

/// <summary>How far a field is computed.</summary>
public enum FieldStage
{
    /// <summary>Reflections traced at the corners of the largest blocks alone: for a console that is being moved.</summary>
    Coarse,

    /// <summary>Reflections traced wherever a map needs them: 99 cells of 100 within 0.3 dB of the exact figure.</summary>
    Map,

    /// <summary>Every cell traced: each equals the answer for a seat at its centre, bit for bit.</summary>
    Exact,
}
