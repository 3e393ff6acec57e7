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

    /// <summary>The shares of a wall's length, 0 or less and 1 or more, between which the run lies.</summary>
    /// <param name="start">One end of the wall.</param>
    /// <param name="end">The other end.</param>
    internal (double From, double To) SharesOf(Point2 start, Point2 end)
    {
        Point2 along = end - start;
        double a = Point2.Dot(Start - start, along) / Point2.Dot(along, along), b = Point2.Dot(End - start, along) / Point2.Dot(along, along);
        return (Math.Min(0, Math.Min(a, b)), Math.Max(1, Math.Max(a, b)));
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
