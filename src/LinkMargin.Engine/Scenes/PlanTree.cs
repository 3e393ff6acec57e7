using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// Which of many boxes on a plan a line may meet. Boxes are packed eight to a node along a space-filling order, nodes
/// eight to a node above, all in flat arrays; a query walks down only where the line and a node's box overlap.
/// </summary>
internal sealed class PlanTree
{
    private const int Fan = 8;
    private const int DeepestLevels = 12; // 8^12 boxes: more than memory holds

    private readonly int[] order;
    private readonly Layer[] layers; // the finest first

    /// <summary>Builds a tree over boxes given by their corners.</summary>
    internal PlanTree(IReadOnlyList<PlanBox> boxes)
    {
        order = [.. Enumerable.Range(0, boxes.Count)];
        if (boxes.Count == 0)
        {
            layers = [];
            return;
        }

        Array.Sort(CurvePlaces(boxes), order);
        var made = new List<Layer> { Layer.Of([.. order.Select(i => boxes[i])]) };
        while (made[^1].Count > Fan)
        {
            made.Add(made[^1].Grouped(Fan));
        }

        layers = [.. made];
    }

    /// <summary>Writes the numbers of the boxes that the line may meet.</summary>
    /// <param name="from">One end.</param>
    /// <param name="to">The other end.</param>
    /// <param name="found">Filled from its start; grown when too small.</param>
    /// <param name="reachMetres">Boxes this near to the line count as well.</param>
    /// <returns>How many there are.</returns>
    internal int Query(Point2 from, Point2 to, ref int[] found, double reachMetres = 0)
    {
        if (layers.Length == 0)
        {
            return 0;
        }

        Span<int> pending = stackalloc int[DeepestLevels * Fan * 2];
        int waiting = 0, count = 0;
        var line = new PlanLine(from, to, reachMetres);
        int top = layers.Length - 1;
        for (int node = 0; node < layers[top].Count; node++)
        {
            pending[waiting++] = top;
            pending[waiting++] = node;
            while (waiting > 0)
            {
                int index = pending[--waiting];
                int depth = pending[--waiting];
                if (!line.MayMeet(layers[depth], index))
                {
                    continue;
                }

                if (depth == 0)
                {
                    if (count == found.Length)
                    {
                        Array.Resize(ref found, 2 * found.Length);
                    }

                    found[count++] = order[index];
                    continue;
                }

                int end = Math.Min((index + 1) * Fan, layers[depth - 1].Count);
                for (int child = index * Fan; child < end; child++)
                {
                    pending[waiting++] = depth - 1;
                    pending[waiting++] = child;
                }
            }
        }

        return count;
    }

    // Place of each box's centre along a Z-order curve, 16 bits a side.
    private static uint[] CurvePlaces(IReadOnlyList<PlanBox> boxes)
    {
        double left = boxes.Min(b => b.Left), right = boxes.Max(b => b.Right);
        double bottom = boxes.Min(b => b.Bottom), top = boxes.Max(b => b.Top);
        double scale = 65535 / Math.Max(Math.Max(right - left, top - bottom), 1e-9);
        return [.. boxes.Select(b =>
            Spread((uint)(scale * (((b.Left + b.Right) / 2) - left)))
            | (Spread((uint)(scale * (((b.Bottom + b.Top) / 2) - bottom))) << 1))];
    }

    private static uint Spread(uint x)
    {
        x = (x | (x << 8)) & 0x00FF00FF;
        x = (x | (x << 4)) & 0x0F0F0F0F;
        x = (x | (x << 2)) & 0x33333333;
        return (x | (x << 1)) & 0x55555555;
    }

    /// <summary>One layer's boxes, in the form the overlap test wants: centre and half size.</summary>
    internal sealed class Layer
    {
        private Layer(int count)
        {
            CentreX = new double[count];
            CentreY = new double[count];
            HalfX = new double[count];
            HalfY = new double[count];
        }

        internal double[] CentreX { get; }

        internal double[] CentreY { get; }

        internal double[] HalfX { get; }

        internal double[] HalfY { get; }

        internal int Count => CentreX.Length;

        internal static Layer Of(PlanBox[] boxes)
        {
            var layer = new Layer(boxes.Length);
            for (int i = 0; i < boxes.Length; i++)
            {
                layer.Set(i, boxes[i]);
            }

            return layer;
        }

        internal Layer Grouped(int size)
        {
            var above = new Layer((Count + size - 1) / size);
            for (int group = 0; group < above.Count; group++)
            {
                PlanBox all = At(group * size);
                for (int i = (group * size) + 1; i < Math.Min((group + 1) * size, Count); i++)
                {
                    all = all.With(At(i));
                }

                above.Set(group, all);
            }

            return above;
        }

        private PlanBox At(int i) =>
            new(CentreX[i] - HalfX[i], CentreY[i] - HalfY[i], CentreX[i] + HalfX[i], CentreY[i] + HalfY[i]);

        private void Set(int i, PlanBox box)
        {
            CentreX[i] = (box.Left + box.Right) / 2;
            CentreY[i] = (box.Bottom + box.Top) / 2;

            // A little larger than life, so that rounding never loses a box that the line just touches.
            HalfX[i] = ((box.Right - box.Left) / 2) + Touching.SlackMetres;
            HalfY[i] = ((box.Top - box.Bottom) / 2) + Touching.SlackMetres;
        }
    }

    // A line and a box overlap unless an axis parts them: x, y, or the line's own normal.
    private readonly struct PlanLine(Point2 from, Point2 to, double reach)
    {
        private readonly double midX = (from.X + to.X) / 2;
        private readonly double midY = (from.Y + to.Y) / 2;
        private readonly double reachX = Math.Abs(to.X - from.X) / 2;
        private readonly double reachY = Math.Abs(to.Y - from.Y) / 2;
        private readonly double alongX = to.X - from.X;
        private readonly double alongY = to.Y - from.Y;

        internal bool MayMeet(Layer layer, int i)
        {
            double offX = layer.CentreX[i] - midX, offY = layer.CentreY[i] - midY;
            double halfX = layer.HalfX[i] + reach, halfY = layer.HalfY[i] + reach;
            return Math.Abs(offX) <= halfX + reachX
                && Math.Abs(offY) <= halfY + reachY
                && Math.Abs((offX * alongY) - (offY * alongX))
                    <= (2 * halfX * reachY) + (2 * halfY * reachX);
        }
    }
}
