using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Paths.Reflected;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>
/// The diffraction edges of a house with the loss between them, computed once for all spots. A search looks at many houses through a few links
/// each, which follow only some edges: the legs from an edge are computed when they are first needed.
/// </summary>
internal sealed class EdgeGraph : IPathSource
{
    /// <summary>With more edges than this only paths round a single edge are searched.</summary>
    private const int MostEdges = 400;

    // A leg that loses more than 30 dB is part of no path round two edges.
    private static readonly double LeastLegRatio = Decibels.ToPowerRatio(-30);

    // A leg shorter than this has no obstacles, and its edge is within reach of the straight line, metres.
    private const double LeastLegMetres = 1e-3;

    private readonly Legs?[] legs; // from each edge; null as long as they are not needed

    internal EdgeGraph(TracedHouse house, ClosingWalls walls)
    {
        House = house;
        FarFronts = new FarFronts(house, walls);
        Edges = DiffractionEdges.Of(house.Scene);
        legs = new Legs?[Edges.Length];
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
    /// <param name="edge">The edge.</param>
    /// <param name="buffer">The thread's own.</param>
    internal ReadOnlySpan<(int To, double LossDb)> LegsFrom(int edge, TraceBuffer buffer)
    {
        if (Edges.Length > MostEdges)
        {
            return [];
        }

        // Several threads may come here at once: all compute the same.
        Legs? from = Volatile.Read(ref legs[edge]);
        if (from is null)
        {
            Volatile.Write(ref legs[edge], from = FindLegs(edge, buffer));
        }

        return from.Passable;
    }

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

    private Legs FindLegs(int from, TraceBuffer buffer)
    {
        double[] ratios = new double[Edges.Length];
        for (int to = 0; to < ratios.Length; to++)
        {
            ratios[to] = Volatile.Read(ref legs[to]) is { } known ? known.Ratios[from] : RatioBetween(Math.Min(from, to), Math.Max(from, to), buffer);
        }

        return new Legs(ratios, [.. ratios.Index().Where(leg => leg.Item > 0).Select(leg => (leg.Index, Decibels.LossFromPowerRatio(leg.Item))).OrderBy(leg => leg.Item2)]);
    }

    // The same both ways; 0 for a leg that is part of no path.
    private double RatioBetween(int one, int other, TraceBuffer buffer)
    {
        DiffractionEdge start = Edges[one], end = Edges[other];
        if (start.Group == end.Group || start.HighLevel < end.LowLevel || end.HighLevel < start.LowLevel)
        {
            return 0;
        }

        (Point3 from, Point3 to) = LegBetween(start, end);
        double ratio = LegRatio(from, to, buffer, LeastLegRatio);
        return ratio > LeastLegRatio ? ratio : 0;
    }

    // Share of power that passes the obstacles on the leg to each other edge, and where that is enough, the edge and the loss, dB, least first.
    private sealed record Legs(double[] Ratios, (int To, double LossDb)[] Passable);
}
