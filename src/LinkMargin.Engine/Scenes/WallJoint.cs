using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// A place where straight runs of walls end, and the other runs that meet or pass there. Ends within <see cref="SameMetres"/> of
/// each other are one place, and so are all ends that a chain of such pairs connects, whatever order the walls are listed in.
/// </summary>
/// <param name="Ends">The ends, one of each run that ends there.</param>
/// <param name="Ways">The direction of each wall that leaves; its length has no meaning.</param>
/// <param name="RunCount">How many runs end there or pass.</param>
/// <param name="Walls">The walls of those runs that reach the place, by number.</param>
internal sealed record WallJoint(
    IReadOnlyList<Point2> Ends, IReadOnlyList<Point2> Ways, int RunCount, IReadOnlyList<int> Walls)
{
    /// <summary>
    /// Ends this close to each other meet, metres: a centimetre, and a slack for people who write ends just a centimetre apart.
    /// </summary>
    internal const double SameMetres = 0.01 + GeometryTolerances.SlackMetres;

    /// <summary>The joints of a level.</summary>
    internal static IReadOnlyList<WallJoint> Of(IReadOnlyList<StraightRun> runs, IReadOnlyList<WallPanel> walls)
    {
        // End 2i is the start of run i, end 2i + 1 its end.
        Point2[] ends = [.. runs.SelectMany(run => new[] { run.Start, run.End })];
        var tree = new PlanTree([.. runs.Select(run => PlanBox.Round(run.Start, run.End))]);
        int[] found = new int[16];
        var joints = new List<WallJoint>();
        foreach (int[] cluster in ClustersOf(ends).All())
        {
            var there = new HashSet<int>(cluster);
            var met = new SortedSet<int>(cluster.Select(end => end / 2));
            foreach (int end in cluster)
            {
                int count = tree.Query(ends[end], ends[end], ref found, SameMetres);
                met.UnionWith(found[..count].Where(run => DistanceTo(ends[end], runs[run].Start, runs[run].End) <= SameMetres));
            }

            joints.Add(new WallJoint(
                [.. cluster.Select(end => ends[end])],
                [.. met.SelectMany(run => Ways(run))],
                met.Count,
                [.. met.SelectMany(run => runs[run].Walls).Where(wall =>
                    cluster.Any(end => DistanceTo(ends[end], walls[wall].Start, walls[wall].End) <= SameMetres))]));

            // Towards each end that is not at this very place.
            IEnumerable<Point2> Ways(int run)
            {
                Point2 along = runs[run].End - runs[run].Start;
                return (there.Contains(2 * run), there.Contains((2 * run) + 1)) switch
                {
                    (true, true) => [],
                    (true, false) => [along],
                    (false, true) => [-1 * along],
                    _ => [along, -1 * along],
                };
            }
        }

        return joints;
    }

    private static Clusters ClustersOf(Point2[] ends)
    {
        var clusters = new Clusters(ends.Length);
        int[] order = [.. Enumerable.Range(0, ends.Length).OrderBy(i => ends[i].X)];
        for (int i = 0; i < order.Length; i++)
        {
            for (int j = i + 1; j < order.Length && ends[order[j]].X - ends[order[i]].X <= SameMetres; j++)
            {
                if (ends[order[i]].DistanceTo(ends[order[j]]) <= SameMetres)
                {
                    clusters.Join(order[i], order[j]);
                }
            }
        }

        return clusters;
    }

    private static double DistanceTo(Point2 at, Point2 start, Point2 end)
    {
        Point2 along = end - start;
        double share = Math.Clamp(Point2.Dot(at - start, along) / Point2.Dot(along, along), 0, 1);
        return at.DistanceTo(start + (share * along));
    }
}
