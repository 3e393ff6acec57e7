using System.Numerics;
using System.Runtime.Intrinsics;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// Which of many boxes on a plan a line may meet. Boxes are packed eight to a node along a space-filling order, nodes
/// eight to a node above, all in flat arrays; a query walks down only where the line and a node's box overlap.
/// </summary>
internal sealed class PlanTree
{
    /// <summary>How many boxes there are in a group.</summary>
    internal const int Fan = 8;

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
    /// <param name="reachMetres">Boxes this close to the line count as well.</param>
    /// <returns>How many there are.</returns>
    internal int Query(Point2 from, Point2 to, ref int[] found, double reachMetres = 0)
    {
        if (layers.Length == 0)
        {
            return 0;
        }

        Span<int> pending = stackalloc int[DeepestLevels * Fan * 2];
        int count = 0;
        var line = new PlanLine(from, to, reachMetres);
        int top = layers.Length - 1;
        uint tops = line.MayMeet(layers[top], 0);
        for (; tops != 0; tops &= tops - 1)
        {
            int node = BitOperations.TrailingZeroCount(tops);
            if (top == 0)
            {
                Add(node, ref found, ref count);
                continue;
            }

            int waiting = 0;
            pending[waiting++] = top - 1;
            pending[waiting++] = node;
            while (waiting > 0)
            {
                int group = pending[--waiting];
                int depth = pending[--waiting];
                uint met = line.MayMeet(layers[depth], group);
                if (depth > 0)
                {
                    for (; met != 0; met &= met - 1)
                    {
                        pending[waiting++] = depth - 1;
                        pending[waiting++] = (group * Fan) + BitOperations.TrailingZeroCount(met);
                    }

                    continue;
                }

                while (met != 0)
                {
                    int bit = BitOperations.Log2(met);
                    met ^= 1u << bit;
                    Add((group * Fan) + bit, ref found, ref count);
                }
            }
        }

        return count;
    }

    /// <summary>The numbers of the boxes in the order in which they are packed, <see cref="Fan"/> to a group.</summary>
    internal IReadOnlyList<int> Order => order;

    /// <summary>Writes the groups of boxes that the line may meet, each followed by which of them it may meet, a bit each.</summary>
    /// <param name="from">One end.</param>
    /// <param name="to">The other end.</param>
    /// <param name="found">Filled from its start; grown when too small.</param>
    /// <param name="reachMetres">Boxes this close to the line count as well.</param>
    /// <returns>How many numbers there are, two for each group.</returns>
    internal int QueryGroups(Point2 from, Point2 to, ref int[] found, double reachMetres = 0)
    {
        int count = 0;
        if (layers.Length > 0)
        {
            AddGroups(new PlanLine(from, to, reachMetres), layers.Length - 1, 0, ref found, ref count);
        }

        return count;
    }

    private void AddGroups(in PlanLine line, int depth, int group, ref int[] found, ref int count)
    {
        uint met = line.MayMeet(layers[depth], group);
        if (depth == 0)
        {
            if (met != 0)
            {
                if (count + 1 >= found.Length)
                {
                    Array.Resize(ref found, 2 * found.Length);
                }

                found[count++] = group;
                found[count++] = (int)met;
            }

            return;
        }

        for (; met != 0; met &= met - 1)
        {
            AddGroups(line, depth - 1, (group * Fan) + BitOperations.TrailingZeroCount(met), ref found, ref count);
        }
    }

    private void Add(int box, ref int[] found, ref int count)
    {
        if (count == found.Length)
        {
            Array.Resize(ref found, 2 * found.Length);
        }

        found[count++] = order[box];
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

    /// <summary>One layer's boxes, in the form that the overlap test needs: centre and half size.</summary>
    internal sealed class Layer
    {
        private Layer(int count)
        {
            // Whole groups; what fills up the last one is met by no line.
            int room = (count + Fan - 1) / Fan * Fan;
            Count = count;
            CentreX = new double[room];
            CentreY = new double[room];
            HalfX = new double[room];
            HalfY = new double[room];
            HalfX.AsSpan(count).Fill(double.NegativeInfinity);
            HalfY.AsSpan(count).Fill(double.NegativeInfinity);
        }

        internal double[] CentreX { get; }

        internal double[] CentreY { get; }

        internal double[] HalfX { get; }

        internal double[] HalfY { get; }

        internal int Count { get; }

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

            // Slightly enlarged, so that rounding never loses a box that the line just touches.
            HalfX[i] = ((box.Right - box.Left) / 2) + GeometryTolerances.SlackMetres;
            HalfY[i] = ((box.Top - box.Bottom) / 2) + GeometryTolerances.SlackMetres;
        }
    }

    // A line and a box overlap unless an axis separates them: x, y, or the line's own normal.
    private readonly struct PlanLine(Point2 from, Point2 to, double reach)
    {
        private readonly double midX = (from.X + to.X) / 2;
        private readonly double midY = (from.Y + to.Y) / 2;
        private readonly double reachX = Math.Abs(to.X - from.X) / 2;
        private readonly double reachY = Math.Abs(to.Y - from.Y) / 2;
        private readonly double alongX = to.X - from.X;
        private readonly double alongY = to.Y - from.Y;

        /// <summary>Which boxes of a group of eight it may meet, a bit each.</summary>
        internal uint MayMeet(Layer layer, int group) => MayMeetFour(layer, group * Fan) | (MayMeetFour(layer, (group * Fan) + 4) << 4);

        private uint MayMeetFour(Layer layer, int i)
        {
            Vector256<double> offX = Vector256.LoadUnsafe(ref layer.CentreX[i]) - Vector256.Create(midX);
            Vector256<double> offY = Vector256.LoadUnsafe(ref layer.CentreY[i]) - Vector256.Create(midY);
            Vector256<double> halfX = Vector256.LoadUnsafe(ref layer.HalfX[i]) + Vector256.Create(reach);
            Vector256<double> halfY = Vector256.LoadUnsafe(ref layer.HalfY[i]) + Vector256.Create(reach);
            Vector256<double> along = (halfX * (2 * reachY)) + (halfY * (2 * reachX));
            Vector256<double> met = Vector256.LessThanOrEqual(Vector256.Abs(offX), halfX + Vector256.Create(reachX))
                & Vector256.LessThanOrEqual(Vector256.Abs(offY), halfY + Vector256.Create(reachY))
                & Vector256.LessThanOrEqual(Vector256.Abs((offX * alongY) - (offY * alongX)), along);
            return met.ExtractMostSignificantBits();
        }
    }
}

/// <summary>A box on the plan with sides along the axes, metres.</summary>
internal readonly record struct PlanBox(double Left, double Bottom, double Right, double Top)
{
    /// <summary>The smallest box around two points.</summary>
    internal static PlanBox Round(Point2 a, Point2 b) =>
        new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X), Math.Max(a.Y, b.Y));

    /// <summary>The smallest box around both.</summary>
    internal PlanBox With(PlanBox other) => new(
        Math.Min(Left, other.Left),
        Math.Min(Bottom, other.Bottom),
        Math.Max(Right, other.Right),
        Math.Max(Top, other.Top));
}
