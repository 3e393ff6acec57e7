namespace LinkMargin.Engine.Fields;

/// <summary>
/// A block of cells between nodes: its corners and, on a side longer than <see cref="SmallSteps"/>, the middle. Between them the fourth root of the
/// power is quadratic along such a side and linear along others; in it a path that fades out and one that falls off are both nearly linear.
/// </summary>
internal readonly ref struct NodeBlock
{
    /// <summary>The most nodes of a block.</summary>
    internal const int MostNodes = NodeSide.MostNodes * NodeSide.MostNodes;

    /// <summary>A side of so many cells, minus one, has no node in its middle.</summary>
    internal const int SmallSteps = 2;

    private readonly int columns;
    private readonly NodeSide across;
    private readonly NodeSide up;
    private readonly Span<double> roots; // at each node, row by row

    /// <summary>Reads the powers at the nodes.</summary>
    /// <param name="block">The block.</param>
    /// <param name="columns">How many columns the grid has.</param>
    /// <param name="power">The power at a node.</param>
    /// <param name="room">Room for <see cref="MostNodes"/>.</param>
    /// <param name="cornersOnly">Whether there are no nodes but corners.</param>
    internal NodeBlock(CellBlock block, int columns, Func<int, double> power, Span<double> room, bool cornersOnly = false)
    {
        this.columns = columns;
        across = new NodeSide(block.West, block.East, !cornersOnly && block.Width > SmallSteps);
        up = new NodeSide(block.South, block.North, !cornersOnly && block.Height > SmallSteps);
        roots = room[..(across.Count * up.Count)];
        for (int i = 0; i < roots.Length; i++)
        {
            roots[i] = Math.Sqrt(Math.Sqrt(power(Cell(i))));
        }
    }

    /// <summary>Whether some cells of a block are no corners.</summary>
    internal static bool HasCellsBetween(CellBlock block) => block.Width > 1 || block.Height > 1;

    /// <summary>
    /// How rough the power is in both directions: the greatest factor, of all power, by which a node in the middle differs from what the ends
    /// of its row or column give. Between smooth values that is several times the error. On a side with no middle, by which its ends differ.
    /// </summary>
    /// <param name="beside">Power at a node that counts beside it.</param>
    internal (double Across, double Up) Roughness(Func<int, double> beside)
    {
        double roughAcross = 1, roughUp = 1;
        for (int i = 0; i < roots.Length; i++)
        {
            int column = i % across.Count, row = i - column;
            double other = beside(Cell(i));
            roughAcross = Math.Max(roughAcross, across.Factor(roots[row], roots[i], roots[row + across.Count - 1], i % across.Count, other));
            roughUp = Math.Max(roughUp, up.Factor(roots[column], roots[i], roots[roots.Length - across.Count + column], i / across.Count, other));
        }

        return (roughAcross, roughUp);
    }

    /// <summary>Writes the power at each of its cells.</summary>
    internal void Fill(Span<double> powers)
    {
        Span<double> weights = stackalloc double[NodeSide.MostNodes], sums = stackalloc double[NodeSide.MostNodes];
        for (int row = up.First; row <= up.Last; row++)
        {
            up.Weigh(row, weights);
            sums.Clear();
            for (int i = 0; i < roots.Length; i++)
            {
                sums[i % across.Count] += weights[i / across.Count] * roots[i];
            }

            for (int column = across.First; column <= across.Last; column++)
            {
                across.Weigh(column, weights);
                double root = 0;
                for (int i = 0; i < across.Count; i++)
                {
                    root += weights[i] * sums[i];
                }

                powers[(row * columns) + column] = root > 0 ? root * root * root * root : 0;
            }
        }
    }

    private int Cell(int node) => (up.At(node / across.Count) * columns) + across.At(node % across.Count);
}

/// <summary>The columns, or rows, of a block that have nodes.</summary>
/// <param name="First">The first.</param>
/// <param name="Last">The last; the only one where it is the first.</param>
/// <param name="HasMiddle">Whether there is one in the middle.</param>
internal readonly record struct NodeSide(int First, int Last, bool HasMiddle)
{
    /// <summary>The most nodes of a side.</summary>
    internal const int MostNodes = 3;

    /// <summary>How many there are.</summary>
    internal int Count => Last == First ? 1 : HasMiddle ? MostNodes : 2;

    private int Middle => (First + Last) / 2;

    /// <summary>The column or row of a node.</summary>
    internal int At(int node) => node == 0 ? First : node == Count - 1 ? Last : Middle;

    /// <summary>Weights of the nodes at a place, by Lagrange's formula.</summary>
    internal void Weigh(int at, Span<double> weights)
    {
        if (HasMiddle)
        {
            weights[0] = (double)((at - Middle) * (at - Last)) / ((First - Middle) * (First - Last));
            weights[1] = (double)((at - First) * (at - Last)) / ((Middle - First) * (Middle - Last));
            weights[2] = (double)((at - First) * (at - Middle)) / ((Last - First) * (Last - Middle));
            return;
        }

        weights[1] = Last == First ? 0 : (double)(at - First) / (Last - First);
        weights[0] = 1 - weights[1];
    }

    /// <summary>
    /// The factor by which power at the node in the middle differs from what the ends give; 1 for the ends. With no middle, that by which the ends differ.
    /// </summary>
    /// <param name="first">Fourth root of the power at the first.</param>
    /// <param name="own">The same at a node.</param>
    /// <param name="last">The same at the last.</param>
    /// <param name="node">The node.</param>
    /// <param name="beside">Power that counts beside it.</param>
    internal double Factor(double first, double own, double last, int node, double beside)
    {
        if (!HasMiddle)
        {
            return Factor(first, last, beside);
        }

        return node == 1 ? Factor(own, first + ((double)(Middle - First) / (Last - First) * (last - first)), beside) : 1;
    }

    private static double Factor(double one, double other, double beside)
    {
        double greater = Math.Max(one, other), less = Math.Min(one, other);
        return greater == less ? 1 : ((greater * greater * greater * greater) + beside) / ((less * less * less * less) + beside);
    }
}
