using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using NetTopologySuite.Algorithm;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;

namespace LinkMargin.Benchmarks;

/// <summary>
/// The baseline: which walls of a level a line crosses, by a general-purpose geometry library. A packed tree is asked for
/// the walls about the line, a robust intersector about each. It gives no order, angle, height or opening.
/// </summary>
internal sealed class GeneralPurposeCrossings
{
    private readonly STRtree<int> tree = new();
    private readonly Coordinate[] starts;
    private readonly Coordinate[] ends;
    private readonly RobustLineIntersector intersector = new();

    internal GeneralPurposeCrossings(Level level)
    {
        starts = [.. level.Walls.Select(wall => At(wall.Start))];
        ends = [.. level.Walls.Select(wall => At(wall.End))];
        for (int i = 0; i < starts.Length; i++)
        {
            tree.Insert(new Envelope(starts[i], ends[i]), i);
        }

        tree.Build();
    }

    /// <summary>Writes the numbers of the walls crossed; returns how many.</summary>
    internal int Find(Point3 from, Point3 to, List<int> crossed)
    {
        crossed.Clear();
        Coordinate start = At(from.Plan), end = At(to.Plan);
        foreach (int wall in tree.Query(new Envelope(start, end)))
        {
            intersector.ComputeIntersection(start, end, starts[wall], ends[wall]);
            if (intersector.HasIntersection)
            {
                crossed.Add(wall);
            }
        }

        return crossed.Count;
    }

    private static Coordinate At(Point2 p) => new(p.X, p.Y);
}
