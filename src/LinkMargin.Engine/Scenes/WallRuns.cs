using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Scenes;

/// <summary>How far the straight run of walls goes that a wall is part of, so that a wall in two parts is looked at as one.</summary>
internal static class WallRuns
{
    /// <summary>For each wall the shares of its length, 0 or less and 1 or more, between which its run lies.</summary>
    internal static (double From, double To)[] Of(IReadOnlyList<WallPanel> walls)
    {
        var runs = new (double From, double To)[walls.Count];
        Array.Fill(runs, (0, 1)); // for a wall of no length, which stands in nothing's way
        foreach (IGrouping<int, int> plane in Enumerable.Range(0, walls.Count)
            .Where(i => walls[i].Start != walls[i].End)
            .GroupBy(i => walls[i].Mirror))
        {
            WallPanel first = walls[plane.First()];
            Point2 along = (1 / first.Start.DistanceTo(first.End)) * (first.End - first.Start);
            var stretches = plane
                .Select(i => (Wall: i, Start: Point2.Dot(walls[i].Start, along), End: Point2.Dot(walls[i].End, along)))
                .OrderBy(s => Math.Min(s.Start, s.End))
                .ToArray();
            for (int from = 0, to; from < stretches.Length; from = to)
            {
                double low = Low(from), high = Math.Max(stretches[from].Start, stretches[from].End);
                for (to = from + 1; to < stretches.Length && Low(to) <= high + Touching.JointMetres; to++)
                {
                    high = Math.Max(high, Math.Max(stretches[to].Start, stretches[to].End));
                }

                foreach ((int wall, double start, double end) in stretches[from..to])
                {
                    double a = (low - start) / (end - start), b = (high - start) / (end - start);
                    runs[wall] = (Math.Min(a, b), Math.Max(a, b));
                }

                double Low(int i) => Math.Min(stretches[i].Start, stretches[i].End);
            }
        }

        return runs;
    }
}
