using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>The diffraction edges of a house with the loss between them, computed once for all spots.</summary>
internal sealed class EdgeGraph : IPathSource
{
    /// <summary>With more edges than this only paths round a single edge are looked for.</summary>
    private const int MostEdges = 400;

    // A leg that loses more than this is part of no diffracted path, dB.
    private const double MostLegDb = 30;

    private readonly List<(int To, double LossDb)>[] legs;

    internal EdgeGraph(TracedHouse house)
    {
        House = house;
        Scene scene = house.Scene;
        Edges = DiffractionEdges.Of(scene);
        legs = [.. Edges.Select(_ => new List<(int, double)>())];
        if (Edges.Length > MostEdges)
        {
            return;
        }

        var found = new (int To, double LossDb)[Edges.Length][];
        Parallel.For(0, Edges.Length, () => new TraceBuffer(), (i, _, buffer) =>
        {
            found[i] = [.. LegsFrom(scene, house.Losses, i, buffer)];
            return buffer;
        }, _ => { });
        for (int i = 0; i < found.Length; i++)
        {
            foreach ((int to, double lossDb) in found[i])
            {
                legs[i].Add((to, lossDb));
                legs[to].Add((i, lossDb));
            }
        }
    }

    /// <summary>The house.</summary>
    internal TracedHouse House { get; }

    /// <summary>The edges.</summary>
    internal DiffractionEdge[] Edges { get; }

    /// <inheritdoc/>
    public PathFinder From(Point3 start) => new DiffractedPaths(this, start);

    /// <summary>The legs that leave an edge: where to, and the loss of the obstacles in their way, dB.</summary>
    internal IReadOnlyList<(int To, double LossDb)> LegsFrom(int edge) => legs[edge];

    /// <summary>Loss of the obstacles in the way of a straight leg, dB.</summary>
    internal static double LegDb(Scene scene, LossTables losses, Point3 from, Point3 to, TraceBuffer buffer)
    {
        scene.Trace(from, to, buffer, wholeFloors: true);
        double lossDb = 0;
        foreach (ref readonly Hit hit in buffer.Hits)
        {
            lossDb += losses.Db(hit);
        }

        return lossDb;
    }

    private IEnumerable<(int To, double LossDb)> LegsFrom(Scene scene, LossTables losses, int from, TraceBuffer buffer)
    {
        DiffractionEdge start = Edges[from];
        for (int to = from + 1; to < Edges.Length; to++)
        {
            DiffractionEdge end = Edges[to];
            if (start.Group == end.Group || start.HighLevel < end.LowLevel || end.HighLevel < start.LowLevel)
            {
                continue;
            }

            double height = (Math.Max(start.Low, end.Low) + Math.Min(start.High, end.High)) / 2;
            double lossDb = LegDb(scene, losses, start.At(height), end.At(height), buffer);
            if (lossDb <= MostLegDb)
            {
                yield return (to, lossDb);
            }
        }
    }
}
