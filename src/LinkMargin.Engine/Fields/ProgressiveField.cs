using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;

namespace LinkMargin.Engine.Fields;

/// <summary>
/// A field that is coarse first and refined in place. It may be stopped at any moment and continued later: each figure depends only on its
/// position, so the result of a stage has the same bits whatever the interruptions and the number of threads.
/// <para>
/// For a map, power is computed at the nodes of blocks and interpolated between them (<see cref="InterpolatedPowers"/>), never through a wall, a
/// door's plane or a side of a fixture (<see cref="FieldRegions"/>); a block that its nodes show to be rough is halved, down to single cells.
/// Reflections, which take most of the time of a link, are interpolated by themselves: they vary slowly. Within a block only mirrors that counted at one of
/// its corners or in its middle are tried again. The straight line, the diffuse field and diffracted paths have steeper edges (<see cref="QuickPowers"/>).
/// While a console is being moved, reflections are interpolated between the corners of the largest blocks and the others computed where cells
/// around differ.
/// </para>
/// </summary>
public sealed class ProgressiveField
{
    /// <summary>Longest side of a block over which a map is interpolated, reflections apart, metres.</summary>
    public const double LargestBlockMetres = 0.8;

    /// <summary>How close to the exact figure 99 of 100 cells of a map are, dB.</summary>
    public const double MapAccuracyDb = 0.3;

    // For reflections, and while a console is being moved, this many of these blocks, each way, are one at first.
    private const int SlowBlocks = 2;

    // The roughest blocks that are interpolated (InterpolatedPowers), dB. A map then is as close to the exact figures as MapAccuracyDb.
    private const double SlowRoughDb = 0.22;
    private const double QuickRoughDb = 0.2;

    // The share of a map's time that its reflections take.
    private const double SlowTime = 0.6;

    private readonly FieldRequest request;
    private readonly Grid grid;
    private readonly SpotModel spot;
    private readonly IReadOnlyList<CellBlock> regions;
    private readonly double greatestLossDb;
    private readonly int largestSteps;
    private readonly QuickPowers quick; // by all but the slow paths
    private readonly SlowPowers slow; // by the slow ones, where they are traced
    private readonly InterpolatedPowers roughBetween; // before a map is computed
    private readonly InterpolatedPowers slowBetween;
    private readonly InterpolatedPowers quickBetween;
    private int rowsTold; // of a map that is computed first

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
        regions = spot.HasSlowPaths
            ? [.. FieldRegions.Of(model.Scene, request.LevelIndex, grid, handsZ).Where(region => LevelGrid.IsIndoors(level, grid.CentreOf(region.West, region.South)))]
            : [];
        quick = new QuickPowers(spot, level, grid, handsZ, request.Threads);
        slow = new SlowPowers(spot, grid, handsZ, quick, request.Threads);
        roughBetween = new InterpolatedPowers(grid, slow.Roughly, SlowRoughDb, largestSteps);
        slowBetween = new InterpolatedPowers(grid, slow, SlowRoughDb, largestSteps);
        quickBetween = new InterpolatedPowers(grid, new QuickNodes(quick, SlowPower), QuickRoughDb, largestSteps);
    }

    /// <summary>The last stage that is complete; null before the first.</summary>
    public FieldStage? Reached { get; private set; }

    // The stage it begins with.
    private FieldStage? First { get; set; }

    /// <summary>
    /// Continues until a stage is complete, or until it is stopped. It begins with the first stage requested and skips those before.
    /// </summary>
    /// <param name="to">The stage.</param>
    /// <param name="rowDone">Called from any thread as the first stage goes on, once for each row; null for none.</param>
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

    /// <summary>Makes some cells exact, after the last complete stage. Without slow paths every stage is.</summary>
    /// <param name="cells">Different cells.</param>
    /// <param name="cancellation">Stops the work between two cells.</param>
    internal void Trace(IEnumerable<int> cells, CancellationToken cancellation)
    {
        if (spot.HasSlowPaths)
        {
            slow.TraceFully(cells, cancellation);
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

        // Where reflections are traced the others are computed.
        double slowPower = SlowPower(cell);
        return PathLoss.FromPowerRatio(double.IsNaN(slow[cell]) && quickBetween[cell] is { } power ? power + slowPower : quick[cell].With(slowPower));
    }

    private double SlowPower(int cell) => double.IsNaN(slow[cell]) ? slowBetween[cell] ?? roughBetween[cell] ?? 0 : slow[cell];

    private void Complete(FieldStage stage, Action? rowDone, CancellationToken cancellation)
    {
        Action? knownFirst = stage == First ? rowDone : null;
        if (!spot.HasSlowPaths)
        {
            quick.ComputeAll(knownFirst, cancellation);
        }
        else
        {
            switch (stage)
            {
                case FieldStage.Coarse:
                    ComputeRoughly(knownFirst, cancellation);
                    break;
                case FieldStage.Map:
                    slowBetween.Refine(Blocks(SlowBlocks), nodes => Tell(SlowTime * ShareBy(nodes, 0.1), knownFirst), cancellation);
                    quickBetween.Refine(QuickBlocks(), nodes => Tell(SlowTime + ((1 - SlowTime) * ShareBy(nodes, 0.25)), knownFirst), cancellation);
                    quick.ComputeWhere(cell => quickBetween[cell] is null, null, cancellation);
                    Tell(1, knownFirst);
                    break;
                default:
                    quick.ComputeAll(knownFirst, cancellation);
                    slow.TraceFully(Enumerable.Range(0, grid.Count), cancellation);
                    quickBetween.Clear();
                    break;
            }
        }

        Reached = stage;
    }

    // How many nodes a map needs is not known before. So its rows are reported by a share that always grows: one half at a usual number of them.
    private double ShareBy(int nodes, double usualShare) => nodes / (nodes + (usualShare * grid.Count));

    private void Tell(double share, Action? rowDone)
    {
        for (; rowDone is not null && rowsTold < (int)(share * grid.Rows); rowsTold++)
        {
            rowDone();
        }
    }

    private void ComputeRoughly(Action? rowDone, CancellationToken cancellation)
    {
        List<CellBlock> blocks = Blocks(SlowBlocks);
        int[] corners = [.. blocks.SelectMany(CornersOf).Distinct()];
        quick.ComputeRoughly(regions, corners, rowDone, cancellation);
        roughBetween.BetweenCorners(blocks, cancellation);
    }

    // What bends round edges and passes slits beside a wall varies most close to it. Lines along joists and walls run along the grid through
    // the console: such a line may lose less than those beside it, over a width that the nodes of a block would miss.
    private IEnumerable<CellBlock> QuickBlocks()
    {
        double column = ((spot.Console.X - grid.Origin.X) / grid.CellMetres) - 0.5, row = ((spot.Console.Y - grid.Origin.Y) / grid.CellMetres) - 0.5;
        return regions.SelectMany(region => region.CutAt(column, row)).SelectMany(region => region.PartsFinerAtSides(largestSteps));
    }

    // The corners of larger blocks are corners of smaller ones, so each stage reuses what the one before traced.
    private List<CellBlock> Blocks(int together) =>
        [.. regions.SelectMany(region => region.Parts(largestSteps, together))];

    private int[] CornersOf(CellBlock block) =>
        [CellOf(block.West, block.South), CellOf(block.East, block.South), CellOf(block.West, block.North), CellOf(block.East, block.North)];

    private int CellOf(int column, int row) => (row * grid.Columns) + column;

    // The other paths as what is interpolated.
    private sealed class QuickNodes(QuickPowers quick, Func<int, double> slow) : INodePowers
    {
        public double At(int cell) => quick[cell].Sum;

        public double Beside(int cell) => slow(cell);

        public void Compute(OpenCell[] cells, CancellationToken cancellation) => quick.Compute([.. cells.Select(one => one.Cell)], cancellation);

        public int[]? MirrorsAt(int[] cells) => null;
    }
}

/// <summary>How far a field is computed.</summary>
public enum FieldStage
{
    /// <summary>Reflections traced at the corners of the largest blocks alone: for a console that is being moved.</summary>
    Coarse,

    /// <summary>Computed wherever a map needs it, and interpolated between: 99 cells of 100 within 0.3 dB of the exact figure.</summary>
    Map,

    /// <summary>Every cell traced: each equals the answer for a seat at its centre, bit for bit.</summary>
    Exact,
}
