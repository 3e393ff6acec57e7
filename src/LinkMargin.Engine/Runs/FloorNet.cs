using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Runs;

/// <summary>
/// Routes between places in a floor's space, without a leg from each place to each. From every place a leg leads along the joists to a few
/// lines across them: the line that halves the space, the one that halves that half, and so on. Between any two places there is a line that
/// both reach, so the net holds a shortest route between them wherever the space or a corner of it lets one through, with a number of legs
/// that grows little faster than the number of places (Clarkson, Kapoor and Vaidya, Rectilinear shortest paths through polygonal obstacles,
/// 1987). The lines do not depend on the places, so one more place never makes a route longer.
/// </summary>
/// <param name="floor">The space.</param>
/// <param name="addNode">Makes a node at a place of the plan.</param>
/// <param name="join">Joins two nodes, by a length in metres and a number of joists to cross.</param>
internal sealed class FloorNet(FloorSpace floor, Func<Point2, int> addNode, Action<int, int, double, int> join)
{
    // Places closer than this along the joists share their last line, metres.
    private const double NarrowestMetres = 0.01;

    // Coordinates closer than a thousandth of a millimetre count as one, metres.
    private const double KeyMetres = 1e-6;

    private readonly Dictionary<(long Along, long Across), int> nodes = [];
    private readonly Dictionary<long, List<(double Along, double Across, int Node)>> lines = [];
    private readonly HashSet<int> reached = [];

    /// <summary>The nodes of a hole at a place of the plan: one, or two where it is at a joist; none outside the space.</summary>
    internal IEnumerable<int> At(Point2 plan)
    {
        foreach (Point2 at in floor.BaysAt(plan).ToList())
        {
            int node = NodeAt(at);
            if (reached.Add(node))
            {
                ReachLines(node, at);
            }

            yield return node;
        }
    }

    /// <summary>Joins the nodes on each line; to be called when all places have been added.</summary>
    internal void JoinLines()
    {
        foreach (List<(double Along, double Across, int Node)> line in lines.OrderBy(line => line.Key).Select(line => line.Value))
        {
            line.Sort((a, b) => a.Across.CompareTo(b.Across));
            foreach (((double along, double across, int node) from, (double Along, double Across, int Node) to) in line.Zip(line.Skip(1)))
            {
                if (floor.IsClearAcross(from.along, from.across, to.Across))
                {
                    join(from.node, to.Node, to.Across - from.across, floor.Crossed(from.across, to.Across));
                }
            }
        }
    }

    private void ReachLines(int node, Point2 at)
    {
        (double low, double high) = (floor.LeastAlong, floor.GreatestAlong);
        while (true)
        {
            double middle = (low + high) / 2;
            if (floor.IsClearAlong(at.X, middle, at.Y) && NodeAt(new Point2(middle, at.Y)) is var on && on != node)
            {
                join(node, on, Math.Abs(middle - at.X), 0);
            }

            if (high - low <= NarrowestMetres)
            {
                return;
            }

            (low, high) = at.X < middle ? (low, middle) : (middle, high);
        }
    }

    private int NodeAt(Point2 at)
    {
        (long Along, long) key = (Key(at.X), Key(at.Y));
        if (!nodes.TryGetValue(key, out int node))
        {
            node = addNode(floor.OnPlan(at));
            nodes.Add(key, node);
            if (!lines.TryGetValue(key.Along, out List<(double, double, int)>? line))
            {
                lines.Add(key.Along, line = []);
            }

            line.Add((at.X, at.Y, node));
        }

        return node;
    }

    private static long Key(double metres) => (long)Math.Round(metres / KeyMetres);
}
