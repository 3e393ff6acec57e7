using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Fields;

/// <summary>
/// Power at the cells of a level by some kinds of path, computed at the nodes of blocks (<see cref="NodeBlock"/>) and interpolated between them.
/// A block is halved in each direction in which it is rough, down to single cells.
/// </summary>
/// <param name="grid">The level's grid.</param>
/// <param name="nodes">What is computed.</param>
/// <param name="mostRoughDb">The greatest roughness of a side that is interpolated along, dB of all power.</param>
/// <param name="mostSteps">The longest side that may be as rough as that; longer ones hide more and must be as many times smoother.</param>
internal sealed class InterpolatedPowers(Grid grid, INodePowers nodes, double mostRoughDb, int mostSteps)
{
    // Nodes between two reports: enough that no thread waits long for the last of them.
    private const int MostAtOnce = 512;

    // Where it is less than this share of all power, even 20 % of it make an error of no more than 0.02 dB.
    private const double LeastShare = 0.02;

    // Mirrors that count at a cell are tried at others no farther away than so many of the longest sides: more than the diagonal of two by two.
    private const int NearLongest = 3;

    private double[] powers = new double[grid.Count];
    private bool[] isBetween = new bool[grid.Count];

    /// <summary>The power at a cell that is interpolated; null for any other.</summary>
    internal double? this[int cell] => isBetween[cell] ? powers[cell] : null;

    /// <summary>Forgets all.</summary>
    internal void Clear() => Array.Clear(isBetween);

    /// <summary>
    /// Interpolates between the corners of blocks, however rough they are. All mirrors are tried at one corner of each block; at the others those
    /// that count at such a corner nearby, also of a block beside it.
    /// </summary>
    /// <param name="blocks">Blocks that meet no wall.</param>
    /// <param name="cancellation">Stops the work between two cells.</param>
    internal void BetweenCorners(IReadOnlyList<CellBlock> blocks, CancellationToken cancellation)
    {
        var tried = new HashSet<int>();
        foreach (int[] corners in blocks.Select(CornersOf).Where(corners => !corners.Any(tried.Contains)))
        {
            tried.Add(corners[^1]);
        }

        bool[] isNode = new bool[grid.Count];
        Compute(tried.Select(cell => new OpenCell(cell, null)), isNode, 0, null, cancellation);
        IEnumerable<int> others = blocks.SelectMany(CornersOf).Distinct();
        Compute(others.Select(cell => new OpenCell(cell, nodes.MirrorsAt([.. tried.Where(one => IsNear(one, cell))]))), isNode, 0, null, cancellation);
        var filled = new Filled(grid, nodes);
        foreach (CellBlock block in blocks)
        {
            filled.Add(block, cornersOnly: true);
        }

        (powers, isBetween) = (filled.Powers, filled.IsBetween);
    }

    /// <summary>
    /// Computes as many nodes as are needed. If it is stopped, nothing changes; called again, it starts again, with nodes that are computed already.
    /// </summary>
    /// <param name="blocks">Blocks that meet no wall.</param>
    /// <param name="computed">Called now and then with how many nodes are computed; null for none.</param>
    /// <param name="cancellation">Stops the work between two cells.</param>
    internal void Refine(IEnumerable<CellBlock> blocks, Action<int>? computed, CancellationToken cancellation)
    {
        int count = 0;
        var filled = new Filled(grid, nodes);
        bool[] isNode = new bool[grid.Count];
        List<OpenBlock> generation = [.. blocks.Select(block => new OpenBlock(block, null))];
        while (generation.Count > 0)
        {
            count = Compute(generation.SelectMany(one => one.With(CornersOf(one.Block))), isNode, count, computed, cancellation);
            List<OpenBlock> open = [];
            foreach (OpenBlock one in generation.Where(one => NodeBlock.HasCellsBetween(one.Block)))
            {
                if (CornersOf(one.Block).All(IsWeak))
                {
                    filled.Add(one.Block, cornersOnly: true);
                }
                else
                {
                    open.Add(one);
                }
            }

            count = Compute(open.Where(one => HasMiddle(one.Block)).SelectMany(one => one.With([MiddleOf(one.Block)])), isNode, count, computed, cancellation);
            for (int i = 0; i < open.Count; i++)
            {
                CellBlock block = open[i].Block;
                open[i] = new OpenBlock(block, open[i].Mirrors ?? nodes.MirrorsAt(HasMiddle(block) ? [.. CornersOf(block), MiddleOf(block)] : CornersOf(block)));
            }

            count = Compute(open.SelectMany(one => one.With(SidesOf(one.Block))), isNode, count, computed, cancellation);
            generation = [.. open.SelectMany(one => Judge(one.Block, filled).Select(part => new OpenBlock(part, one.Mirrors)))];
        }

        for (int cell = 0; cell < isNode.Length; cell++)
        {
            filled.IsBetween[cell] &= !isNode[cell]; // it may be a node of the block beside it
        }

        (powers, isBetween) = (filled.Powers, filled.IsBetween);
    }

    private bool IsNear(int one, int other)
    {
        (int row, int column) = Math.DivRem(one, grid.Columns);
        (int otherRow, int otherColumn) = Math.DivRem(other, grid.Columns);
        int north = row - otherRow, east = column - otherColumn, most = NearLongest * mostSteps;
        return (north * north) + (east * east) <= most * most;
    }

    // Returns how many nodes that makes.
    private int Compute(IEnumerable<OpenCell> cells, bool[] isNode, int before, Action<int>? computed, CancellationToken cancellation)
    {
        int count = before;
        foreach (OpenCell[] some in cells.DistinctBy(one => one.Cell).Chunk(MostAtOnce))
        {
            nodes.Compute(some, cancellation);
            foreach (OpenCell one in some)
            {
                isNode[one.Cell] = true;
            }

            count += some.Length;
            computed?.Invoke(count);
        }

        return count;
    }

    private bool IsWeak(int cell) => !(nodes.At(cell) >= LeastShare * (nodes.At(cell) + nodes.Beside(cell)));

    // Fills a block that is smooth; otherwise gives its parts.
    private IEnumerable<CellBlock> Judge(CellBlock block, in Filled filled)
    {
        (double across, double up) = new NodeBlock(block, grid.Columns, nodes.At, stackalloc double[NodeBlock.MostNodes]).Roughness(nodes.Beside);
        bool isRoughAcross = IsRough(block.Width, across), isRoughUp = IsRough(block.Height, up);
        if (isRoughAcross || isRoughUp)
        {
            return block.Halves(isRoughAcross, isRoughUp);
        }

        filled.Add(block, cornersOnly: false);
        return [];
    }

    private bool IsRough(int steps, double factor) =>
        steps > 1 && !(factor <= Decibels.ToPowerRatio(mostRoughDb * Math.Min(1, (double)mostSteps / steps)));

    // A narrow one as well: a mirror may count in its middle alone.
    private static bool HasMiddle(CellBlock block) => block.Width > NodeBlock.SmallSteps || block.Height > NodeBlock.SmallSteps;

    private int[] CornersOf(CellBlock block) =>
        [CellOf(block.West, block.South), CellOf(block.East, block.South), CellOf(block.West, block.North), CellOf(block.East, block.North)];

    private int MiddleOf(CellBlock block) => CellOf(
        block.Width > NodeBlock.SmallSteps ? block.MiddleColumn : block.West,
        block.Height > NodeBlock.SmallSteps ? block.MiddleRow : block.South);

    // The nodes in the middle of its sides.
    private IEnumerable<int> SidesOf(CellBlock block)
    {
        if (block.Width > NodeBlock.SmallSteps)
        {
            yield return CellOf(block.MiddleColumn, block.South);
            yield return CellOf(block.MiddleColumn, block.North);
        }

        if (block.Height > NodeBlock.SmallSteps)
        {
            yield return CellOf(block.West, block.MiddleRow);
            yield return CellOf(block.East, block.MiddleRow);
        }
    }

    private int CellOf(int column, int row) => (row * grid.Columns) + column;

    // The cells of blocks that have been interpolated.
    private readonly struct Filled(Grid grid, INodePowers nodes)
    {
        internal double[] Powers { get; } = new double[grid.Count];

        internal bool[] IsBetween { get; } = new bool[grid.Count];

        internal void Add(CellBlock block, bool cornersOnly)
        {
            new NodeBlock(block, grid.Columns, nodes.At, stackalloc double[NodeBlock.MostNodes], cornersOnly).Fill(Powers);
            for (int row = block.South; row <= block.North; row++)
            {
                IsBetween.AsSpan((row * grid.Columns) + block.West, block.Width + 1).Fill(true);
            }
        }
    }

    // A block to be examined, and the only mirrors to try in it; null for all.
    private readonly record struct OpenBlock(CellBlock Block, int[]? Mirrors)
    {
        internal IEnumerable<OpenCell> With(IEnumerable<int> cells)
        {
            int[]? mirrors = Mirrors;
            return cells.Select(cell => new OpenCell(cell, mirrors));
        }
    }
}

/// <summary>Power by some kinds of path that is computed at some cells and interpolated between them.</summary>
internal interface INodePowers
{
    /// <summary>The power at a cell that has been computed.</summary>
    internal double At(int cell);

    /// <summary>The power there by all other paths.</summary>
    internal double Beside(int cell);

    /// <summary>Computes it at some different cells.</summary>
    internal void Compute(OpenCell[] cells, CancellationToken cancellation);

    /// <summary>The mirrors that count at some cells and are tried again between them; null where there is no such choice.</summary>
    internal int[]? MirrorsAt(int[] cells);
}

/// <summary>A cell to be computed.</summary>
/// <param name="Cell">Its number.</param>
/// <param name="Mirrors">The only mirrors to try; null for all.</param>
internal readonly record struct OpenCell(int Cell, int[]? Mirrors);
