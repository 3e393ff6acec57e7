using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// Walls of one level that continue each other, or overlap, in one straight line. A wall cut in two is the same run as the whole
/// one.
/// </summary>
/// <param name="Start">One end.</param>
/// <param name="End">The other.</param>
/// <param name="Walls">Its walls, by number.</param>
internal sealed record StraightRun(Point2 Start, Point2 End, IReadOnlyList<int> Walls)
{
    /// <summary>The runs of a level's walls. A wall of no length, which obstructs nothing, is in none.</summary>
    internal static IReadOnlyList<StraightRun> Of(IReadOnlyList<WallPanel> walls)
    {
        var runs = new List<StraightRun>();
        foreach (IGrouping<int, int> plane in Enumerable.Range(0, walls.Count)
            .Where(i => walls[i].Start != walls[i].End)
            .GroupBy(i => walls[i].Mirror))
        {
            WallPanel first = walls[plane.First()];
            Point2 along = (1 / first.Start.DistanceTo(first.End)) * (first.End - first.Start);
            Stretch[] stretches = [.. plane.Select(i => Stretch.Of(i, walls[i], along)).OrderBy(s => s.Low)];
            for (int from = 0, to; from < stretches.Length; from = to)
            {
                int farthest = from;
                for (to = from + 1; to < stretches.Length && stretches[to].Low <= stretches[farthest].High + GeometryTolerances.JointMetres; to++)
                {
                    farthest = stretches[to].High > stretches[farthest].High ? to : farthest;
                }

                runs.Add(new StraightRun(
                    stretches[from].LowEnd, stretches[farthest].HighEnd, [.. stretches[from..to].Select(s => s.Wall)]));
            }
        }

        return runs;
    }

    /// <summary>For each wall the shares of its length, 0 or less and 1 or more, between which its run lies.</summary>
    internal static (double From, double To)[] Shares(IReadOnlyList<StraightRun> runs, IReadOnlyList<WallPanel> walls)
    {
        var shares = new (double From, double To)[walls.Count];
        Array.Fill(shares, (0, 1));
        foreach (StraightRun run in runs)
        {
            foreach (int i in run.Walls)
            {
                Point2 along = walls[i].End - walls[i].Start;
                double a = ShareOf(run.Start), b = ShareOf(run.End);
                shares[i] = (Math.Min(0, Math.Min(a, b)), Math.Max(1, Math.Max(a, b)));

                double ShareOf(Point2 at) => Point2.Dot(at - walls[i].Start, along) / Point2.Dot(along, along);
            }
        }

        return shares;
    }

    private readonly record struct Stretch(int Wall, double Low, double High, Point2 LowEnd, Point2 HighEnd)
    {
        internal static Stretch Of(int number, WallPanel wall, Point2 along)
        {
            double start = Point2.Dot(wall.Start, along), end = Point2.Dot(wall.End, along);
            return start <= end
                ? new Stretch(number, start, end, wall.Start, wall.End)
                : new Stretch(number, end, start, wall.End, wall.Start);
        }
    }
}
