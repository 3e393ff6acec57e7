using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>What a house's bends lose between each other, worked out once for all spots.</summary>
internal sealed class EdgeGraph
{
    /// <summary>Beyond this many bends only ways with one bend are looked for.</summary>
    private const int MostEdges = 400;

    // Path energy that has lost more than this on one leg is no way round any more, dB.
    private const double MostLegDb = 30;

    private readonly List<(int To, double LossDb)>[] legs;

    internal EdgeGraph(Scene scene, LossTables losses)
    {
        DiffractionEdges = Diffracted.DiffractionEdges.Of(scene);
        legs = [.. DiffractionEdges.Select(_ => new List<(int, double)>())];
        if (DiffractionEdges.Length > MostEdges)
        {
            return;
        }

        var found = new (int To, double LossDb)[DiffractionEdges.Length][];
        Parallel.For(0, DiffractionEdges.Length, () => new TraceBuffer(), (i, _, buffer) =>
        {
            found[i] = [.. LegsFrom(scene, losses, i, buffer)];
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

    /// <summary>The bends.</summary>
    internal DiffractionEdge[] DiffractionEdges { get; }

    /// <summary>The legs that leave a bend: where to, and the loss of what stands in their way, dB.</summary>
    internal IReadOnlyList<(int To, double LossDb)> From(int edge) => legs[edge];

    /// <summary>Loss of what stands in the way of a straight leg, dB.</summary>
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
        DiffractionEdge start = DiffractionEdges[from];
        for (int to = from + 1; to < DiffractionEdges.Length; to++)
        {
            DiffractionEdge end = DiffractionEdges[to];
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
