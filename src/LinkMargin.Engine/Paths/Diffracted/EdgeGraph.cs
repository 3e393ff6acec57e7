using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Paths.Reflected;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>The diffraction edges of a house with the loss between them, computed once for all spots.</summary>
internal sealed class EdgeGraph : IPathSource
{
    /// <summary>With more edges than this only paths round a single edge are searched.</summary>
    private const int MostEdges = 400;

    // A leg that loses more than this is part of no path round two edges, dB.
    private const double MostLegDb = 30;

    // A leg shorter than this has no obstacles, and its edge is within reach of the straight line, metres.
    private const double LeastLegMetres = 1e-3;

    private readonly (int To, double LossDb)[][] legs;

    internal EdgeGraph(TracedHouse house, ClosingWalls walls)
    {
        House = house;
        FarFronts = new FarFronts(house, walls);
        Edges = DiffractionEdges.Of(house.Scene);
        legs = Edges.Length <= MostEdges ? FindLegs() : [.. Edges.Select(_ => Array.Empty<(int, double)>())];
    }

    /// <summary>The house.</summary>
    internal TracedHouse House { get; }

    /// <summary>What bends round edges that are not among these.</summary>
    internal FarFronts FarFronts { get; }

    /// <summary>The edges.</summary>
    internal DiffractionEdge[] Edges { get; }

    /// <inheritdoc/>
    public PathFinder From(Point3 start) => new DiffractedPaths(this, start);

    /// <summary>
    /// The legs from an edge to those of other doorways or things: where to, and the loss of the obstacles on them, dB, least
    /// first.
    /// </summary>
    internal ReadOnlySpan<(int To, double LossDb)> LegsFrom(int edge) => legs[edge];

    /// <summary>Where the leg between two edges runs: halfway between the heights that both leave open.</summary>
    internal static (Point3 From, Point3 To) LegBetween(DiffractionEdge from, DiffractionEdge to)
    {
        double height = (Math.Max(from.Low, to.Low) + Math.Min(from.High, to.High)) / 2;
        return (from.At(height), to.At(height));
    }

    /// <summary>Share of power that passes the obstacles on the leg between an edge and an end of the path, at the end's height.</summary>
    internal double EndLegRatio(DiffractionEdge edge, Point3 end, TraceBuffer buffer) => LegRatio(edge.At(end.Z), end, buffer, 0);

    /// <summary>The number of the level that a place is on.</summary>
    internal int LevelOf(Point3 at)
    {
        IReadOnlyList<Houses.Level> levels = House.Scene.House.Levels;
        int level = 0;
        while (level + 1 < levels.Count && at.Z >= levels[level + 1].ElevationMetres)
        {
            level++;
        }

        return level;
    }

    // Share of power that passes the obstacles on a straight leg, as a front of its own; 0 where that is no more than the least.
    private double LegRatio(Point3 from, Point3 to, TraceBuffer buffer, double least)
    {
        if (from.DistanceTo(to) < LeastLegMetres)
        {
            return 1;
        }

        House.Scene.Gather(new Ray(from, to, House.WavelengthMetres), buffer);
        return FrontSum.PowerRatio(buffer.Pieces, House.Losses, least);
    }

    private (int To, double LossDb)[][] FindLegs()
    {
        var onwards = new (int To, double LossDb)[Edges.Length][];
        Parallel.For(0, Edges.Length, () => new TraceBuffer(), (i, _, buffer) =>
        {
            onwards[i] = [.. LegsOnwards(i, buffer)];
            return buffer;
        }, _ => { });

        var all = Edges.Select(_ => new List<(int To, double LossDb)>()).ToArray();
        for (int i = 0; i < onwards.Length; i++)
        {
            foreach ((int to, double lossDb) in onwards[i])
            {
                all[i].Add((to, lossDb));
                all[to].Add((i, lossDb));
            }
        }

        return [.. all.Select(leaving => leaving.OrderBy(leg => leg.LossDb).ToArray())];
    }

    // To edges of higher numbers only: the loss is the same both ways.
    private IEnumerable<(int To, double LossDb)> LegsOnwards(int from, TraceBuffer buffer)
    {
        double least = Decibels.ToPowerRatio(-MostLegDb);
        DiffractionEdge start = Edges[from];
        for (int to = from + 1; to < Edges.Length; to++)
        {
            DiffractionEdge end = Edges[to];
            if (start.Group == end.Group || start.HighLevel < end.LowLevel || end.HighLevel < start.LowLevel)
            {
                continue;
            }

            (Point3 one, Point3 other) = LegBetween(start, end);
            double ratio = LegRatio(one, other, buffer, least);
            if (ratio > least)
            {
                yield return (to, Decibels.LossFromPowerRatio(ratio));
            }
        }
    }
}
