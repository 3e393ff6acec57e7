using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths.Body;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>
/// The ways round from one console: to every bend with at most one bend before it, found once; from there the last leg to
/// any place. Ways are sought with each bend a knife edge between its neighbours, v = 2·√(detour/λ); what they lose is then
/// worked out by <see cref="MultipleEdges"/>.
/// <para>
/// What passes an edge within reach of a straight line is part of that line's path already: of the direct path at the first
/// bend, of the way with the first bend alone at the second. A way round counts only in so far as its last bend lies beyond
/// that reach, so the same energy is never counted twice.
/// </para>
/// </summary>
internal sealed class DiffractedPaths
{
    /// <summary>How many ways are added up at most: the strongest of each doorway.</summary>
    internal const int Most = 8;

    // How many are looked at closely: the two jambs of a doorway share it.
    private const int MostSought = Most + 4;

    /// <summary>Corners of a way with two bends.</summary>
    internal const int MostCorners = 4;

    private const double LeastLegMetres = 1e-3;

    private readonly Scene scene;
    private readonly LossTables losses;
    private readonly EdgeGraph graph;
    private readonly BodyShadow body;
    private readonly Point3 console;
    private readonly bool isBackwards; // the player is where the ways start
    private readonly double wavelength;
    private readonly EdgeReach[] ways;
    private readonly int[] order; // bends, the least lossy way first

    internal DiffractedPaths(Scene scene, LossTables losses, EdgeGraph graph, BodyShadow body, Point3 console, bool isBackwards = false)
    {
        this.scene = scene;
        this.losses = losses;
        this.graph = graph;
        this.body = body;
        this.console = console;
        this.isBackwards = isBackwards;
        wavelength = scene.Band.Equivalent.WavelengthMetres;
        ways = FindPaths();
        order = [.. Enumerable.Range(0, ways.Length).OrderBy(i => ways[i].LossDb + ways[i].DiffractionDb)];
    }

    /// <summary>The strongest ways to a place that could add at least a share of power; strongest first.</summary>
    /// <param name="hands">The place.</param>
    /// <param name="facingDegrees">Where the player looks; null for the mean over all directions.</param>
    /// <param name="least">Power below which a way is not worth a look.</param>
    /// <param name="buffer">The thread's own.</param>
    /// <param name="found">Room for <see cref="Most"/> ways.</param>
    /// <returns>How many there are.</returns>
    internal int To(Point3 hands, double? facingDegrees, double least, TraceBuffer buffer, Span<DiffractedPath> found)
    {
        double straight = console.DistanceTo(hands);
        double leastLoss = least > 0 ? -Decibels.FromPowerRatio(least) - FreeSpaceDb(straight) : double.PositiveInfinity;
        int level = LevelOf(hands), sought = 0;
        Span<DiffractedPath> candidates = stackalloc DiffractedPath[MostSought];
        foreach (int i in order)
        {
            if (ways[i].LossDb + ways[i].DiffractionDb > leastLoss)
            {
                break; // the others have lost more, and no way is shorter than the straight line
            }

            if (graph.DiffractionEdges[i].IsOpenTo(level) && Seek(i, hands, least, out DiffractedPath way))
            {
                Insert(way, candidates, ref sought);
            }
        }

        int count = 0;
        foreach (ref DiffractedPath way in candidates[..sought])
        {
            Weigh(ref way, hands, facingDegrees, buffer);
            Keep(way, found, ref count);
        }

        return count;
    }

    /// <summary>Writes the corners of a way, the console first.</summary>
    /// <param name="way">The way.</param>
    /// <param name="hands">Where it ends.</param>
    /// <param name="corners">Room for <see cref="MostCorners"/>.</param>
    /// <returns>How many there are.</returns>
    internal int Corners(in DiffractedPath way, Point3 hands, Span<Point3> corners)
    {
        int count = 0;
        corners[count++] = console;
        if (ways[way.DiffractionEdge].Before >= 0)
        {
            corners[count++] = ways[way.DiffractionEdge].From;
        }

        corners[count++] = way.Place;
        corners[count++] = hands;
        return count;
    }

    /// <summary>What a way goes through or round, in order from the console.</summary>
    internal PathTurn[] Turns(in DiffractedPath way)
    {
        EdgeReach to = ways[way.DiffractionEdge];
        double before = to.Before < 0 ? 0 : console.DistanceTo(to.From);
        PathTurn last = graph.DiffractionEdges[way.DiffractionEdge].TurnAt(before + to.From.DistanceTo(way.Place));
        return to.Before < 0 ? [last] : [graph.DiffractionEdges[to.Before].TurnAt(before), last];
    }

    private double FreeSpaceDb(double metres) => FreeSpaceLoss.Db(metres, scene.Band.Equivalent);

    private int LevelOf(Point3 at)
    {
        int level = 0;
        while (level + 1 < scene.House.Levels.Count && at.Z >= scene.House.Levels[level + 1].ElevationMetres)
        {
            level++;
        }

        return level;
    }

    // What a way brings by its bends one by one; false where that is less than counts.
    private bool Seek(int i, Point3 hands, double least, out DiffractedPath found)
    {
        found = default;
        EdgeReach way = ways[i];
        DiffractionEdge edge = graph.DiffractionEdges[i];
        double planThere = edge.Plan.DistanceTo(way.From.Plan), planOn = edge.Plan.DistanceTo(hands.Plan);
        double share = planThere + planOn > 0 ? planThere / (planThere + planOn) : 0.5;
        Point3 place = edge.At(way.From.Z + (share * (hands.Z - way.From.Z)));
        double there = way.From.DistanceTo(place), on = place.DistanceTo(hands);
        if (there < LeastLegMetres || on < LeastLegMetres)
        {
            return false; // in the doorway itself nothing bends
        }

        double v = KnifeEdge.ParameterOfDetour(KnifeEdge.DetourMetres(way.From, place, hands), true, wavelength);
        double length = (way.Before < 0 ? 0 : console.DistanceTo(way.From)) + there + on;
        double diffractionDb = way.DiffractionDb - (20 * Math.Log10(EdgeKernel.Edge(v)));
        double sought = EdgeKernel.Apart(v) * WidthFactor(edge, way.From, place.Z, hands) * Decibels.ToPowerRatio(-(FreeSpaceDb(length) + diffractionDb + way.LossDb));
        double counted = FullSpotModel.Counted(sought, least);
        found = new DiffractedPath { DiffractionEdge = i, Place = place, Metres = length, DiffractionDb = diffractionDb, Power = counted };
        return counted > 0;
    }

    // A doorway lights its shadow by the waves of both jambs, which cancel as it narrows: with the amplitudes of their shadows and
    // what a mean keeps of their product (StripSum), as a share of the near jamb's alone. What the far one adds is a way of its own.
    private double WidthFactor(DiffractionEdge edge, Point3 from, double height, Point3 hands)
    {
        if (edge.Jambs is not (Point2 near, Point2 far))
        {
            return 1;
        }

        double v1 = Parameter(near), v2 = Parameter(far);
        double ratio = EdgeKernel.Edge(v2) / EdgeKernel.Edge(v1), phase = Math.PI / 2 * ((v2 * v2) - (v1 * v1));
        return Math.Min(1, 1 + (ratio * ratio) - (2 * ratio * Math.Exp(-phase * phase / 2)));

        double Parameter(Point2 jamb) =>
            KnifeEdge.ParameterOfDetour(KnifeEdge.DetourMetres(from, jamb.At(height), hands), true, wavelength);
    }

    // What it brings by all its bends together, its last leg and the player's body.
    private void Weigh(ref DiffractedPath way, Point3 hands, double? facingDegrees, TraceBuffer buffer)
    {
        Span<Point3> corners = stackalloc Point3[MostCorners];
        double diffractionDb = MultipleEdges.LossDb(corners[..Corners(way, hands, corners)], wavelength);
        scene.Gather(new Ray(way.Place, hands, wavelength), buffer);
        way.Body = isBackwards ? body.Factor(corners[1], console, facingDegrees) : body.Factor(way.Place, hands, facingDegrees);
        way.Power *= Decibels.ToPowerRatio(way.DiffractionDb - diffractionDb) * FrontSum.PowerRatio(buffer.Pieces, losses) * way.Body;
        way.DiffractionDb = diffractionDb;
    }

    // The strongest few, one for each doorway.
    private void Keep(DiffractedPath way, Span<DiffractedPath> found, ref int count)
    {
        int group = graph.DiffractionEdges[way.DiffractionEdge].Group;
        for (int k = 0; k < count; k++)
        {
            if (graph.DiffractionEdges[found[k].DiffractionEdge].Group == group)
            {
                if (found[k].Power >= way.Power)
                {
                    return;
                }

                found[(k + 1)..count].CopyTo(found[k..]);
                count--;
                break;
            }
        }

        Insert(way, found, ref count);
    }

    // Into its place among the strongest; the weakest goes where there is no room.
    private static void Insert(DiffractedPath way, Span<DiffractedPath> found, ref int count)
    {
        int at = count;
        while (at > 0 && found[at - 1].Power < way.Power)
        {
            at--;
        }

        if (at == found.Length)
        {
            return;
        }

        int kept = Math.Min(count, found.Length - 1);
        found[at..kept].CopyTo(found[(at + 1)..]);
        found[at] = way;
        count = kept + 1;
    }

    private EdgeReach[] FindPaths()
    {
        var buffer = new TraceBuffer();
        var first = new EdgeReach[graph.DiffractionEdges.Length];
        int level = LevelOf(console);
        for (int i = 0; i < first.Length; i++)
        {
            // A console finds its first bend on a level of its own, as a place does the last: the same ways from both ends.
            Point3 place = graph.DiffractionEdges[i].At(console.Z);
            double lossDb = graph.DiffractionEdges[i].IsOpenTo(level)
                ? EdgeGraph.LegDb(scene, losses, console, place, buffer)
                : double.PositiveInfinity;
            first[i] = new EdgeReach(-1, console, console.DistanceTo(place), lossDb, 0);
        }

        // One bend before: the way there, its bend, and the leg between the two.
        var best = (EdgeReach[])first.Clone();
        for (int i = 0; i < first.Length; i++)
        {
            Point3 place = graph.DiffractionEdges[i].At(console.Z);
            foreach ((int to, double lossDb) in graph.From(i))
            {
                Point3 next = graph.DiffractionEdges[to].At(place.Z);
                double leg = place.DistanceTo(next);
                double v = KnifeEdge.ParameterOfDetour(KnifeEdge.DetourMetres(console, place, next), true, wavelength);
                var way = new EdgeReach(
                    i, place, first[i].Metres + leg, first[i].LossDb + lossDb, -20 * Math.Log10(EdgeKernel.Edge(v)));
                if (Total(way) < Total(best[to]))
                {
                    best[to] = way;
                }
            }
        }

        return best;

        double Total(in EdgeReach way) => FreeSpaceDb(way.Metres) + way.LossDb + way.DiffractionDb;
    }
}
