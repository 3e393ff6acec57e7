using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>
/// The diffracted paths from one console: to every edge with at most one edge before it, found once; from there the last leg
/// to any place. Paths are searched with each edge a knife edge between its neighbours, v = 2·√(detour/λ); their loss is then
/// computed by <see cref="MultipleEdges"/>.
/// <para>
/// What passes an edge within reach of a straight line is part of that line's path already: of the direct path at the first
/// edge, of the path round the first edge alone at the second. A diffracted path counts only in so far as its last edge lies
/// beyond that reach, so the same energy is never counted twice.
/// </para>
/// </summary>
internal sealed class DiffractedPaths : PathFinder
{
    /// <summary>How many paths are added up at most: the strongest of each doorway.</summary>
    internal const int Most = 8;

    // How many are computed in full: the two jambs of a doorway share one path.
    private const int MostSought = Most + 4;

    /// <summary>Corners of a path round two edges.</summary>
    internal const int MostCorners = 4;

    private const double LeastLegMetres = 1e-3;

    private readonly TracedHouse house;
    private readonly EdgeGraph graph;
    private readonly Point3 console;
    private readonly double wavelength;
    private readonly EdgeReach[] reaches; // of each edge
    private readonly int[] order; // edges, the least loss first

    internal DiffractedPaths(EdgeGraph graph, Point3 console)
    {
        this.graph = graph;
        this.console = console;
        house = graph.House;
        wavelength = house.WavelengthMetres;
        reaches = FindReaches();
        order = [.. Enumerable.Range(0, reaches.Length).OrderBy(i => reaches[i].LossDb + reaches[i].DiffractionDb)];
    }

    internal override void FindTo(in LinkEnds ends, double leastPower, TraceBuffer buffer, ref FoundPaths found)
    {
        Span<DiffractedPath> paths = stackalloc DiffractedPath[Most];
        foreach (ref readonly DiffractedPath path in paths[..To(ends, leastPower, buffer, paths)])
        {
            found.Add(new Found(this, path));
        }
    }

    /// <summary>The strongest paths that could add at least a share of power; strongest first.</summary>
    /// <param name="ends">The link, which starts at this console.</param>
    /// <param name="least">Power below which a path does not count.</param>
    /// <param name="buffer">The thread's own.</param>
    /// <param name="found">Room for <see cref="Most"/> paths.</param>
    /// <returns>How many there are.</returns>
    internal int To(in LinkEnds ends, double least, TraceBuffer buffer, Span<DiffractedPath> found)
    {
        Point3 hands = ends.End;
        double straight = ends.DistanceMetres;
        double leastLoss = least > 0 ? -Decibels.FromPowerRatio(least) - FreeSpaceDb(straight) : double.PositiveInfinity;
        int level = LevelOf(hands), sought = 0;
        Span<DiffractedPath> candidates = stackalloc DiffractedPath[MostSought];
        foreach (int i in order)
        {
            if (reaches[i].LossDb + reaches[i].DiffractionDb > leastLoss)
            {
                break; // the others have lost more, and no path is shorter than the straight line
            }

            if (graph.Edges[i].IsOpenTo(level) && TryEstimate(i, hands, least, out DiffractedPath path))
            {
                Insert(path, candidates, ref sought);
            }
        }

        int count = 0;
        foreach (ref DiffractedPath path in candidates[..sought])
        {
            Complete(ref path, ends, buffer);
            Keep(path, found, ref count);
        }

        return count;
    }

    // Writes the corners of a path, the console first; returns how many there are.
    private int Corners(in DiffractedPath path, Point3 hands, Span<Point3> corners)
    {
        int count = 0;
        corners[count++] = console;
        if (reaches[path.Edge].Before >= 0)
        {
            corners[count++] = reaches[path.Edge].From;
        }

        corners[count++] = path.Place;
        corners[count++] = hands;
        return count;
    }

    // What a path goes through or round, in order from the console.
    private PathTurn[] Turns(in DiffractedPath path)
    {
        EdgeReach to = reaches[path.Edge];
        double before = to.Before < 0 ? 0 : console.DistanceTo(to.From);
        PathTurn last = graph.Edges[path.Edge].TurnAt(before + to.From.DistanceTo(path.Place));
        return to.Before < 0 ? [last] : [graph.Edges[to.Before].TurnAt(before), last];
    }

    private PathBudget Itemise(in DiffractedPath path, in LinkEnds ends, TraceBuffer buffer)
    {
        var corners = new Point3[MostCorners];
        Array.Resize(ref corners, Corners(path, ends.End, corners));
        var crossings = new List<Crossing>();
        double run = 0;
        for (int i = 0; i + 1 < corners.Length; i++)
        {
            crossings.AddRange(Itemisation.Crossings(house.Scene, corners[i], corners[i + 1], buffer, wholeFloors: true, run));
            run += corners[i].DistanceTo(corners[i + 1]);
        }

        var traced = new TracedPath(PathKind.Diffracted, corners, path.Metres, crossings);
        return Itemisation.Budget(house, traced, PathLoss.FromPowerRatio(path.Power), new PathItems
        {
            DiffractionDb = path.DiffractionDb,
            BodyDb = Decibels.LossFromPowerRatio(path.Body),
            Turns = Turns(path),
            Caution = MultipleEdges.CautionOf(corners, wavelength),
        });
    }

    private void AddGradients(in DiffractedPath path, in LinkEnds ends, TraceBuffer buffer, LossGradients gradients)
    {
        Span<Point3> corners = stackalloc Point3[MostCorners];
        int count = Corners(path, ends.End, corners);
        for (int i = 0; i + 2 < count; i++)
        {
            house.Scene.Trace(corners[i], corners[i + 1], buffer, wholeFloors: true);
            gradients.AddHits(buffer.Hits);
        }

        house.Scene.Gather(new Ray(path.Place, ends.End, wavelength), buffer);
        gradients.AddFront(buffer.Pieces);
    }

    private double FreeSpaceDb(double metres) => FreeSpaceLoss.Db(metres, house.Scene.Band.Equivalent);

    private int LevelOf(Point3 at)
    {
        int level = 0;
        while (level + 1 < house.Scene.House.Levels.Count && at.Z >= house.Scene.House.Levels[level + 1].ElevationMetres)
        {
            level++;
        }

        return level;
    }

    // The power of a path by its edges one by one; false where that is too little to count.
    private bool TryEstimate(int i, Point3 hands, double least, out DiffractedPath found)
    {
        found = default;
        EdgeReach reach = reaches[i];
        DiffractionEdge edge = graph.Edges[i];
        double planThere = edge.Plan.DistanceTo(reach.From.Plan), planOn = edge.Plan.DistanceTo(hands.Plan);
        double share = planThere + planOn > 0 ? planThere / (planThere + planOn) : 0.5;
        Point3 place = edge.At(reach.From.Z + (share * (hands.Z - reach.From.Z)));
        double there = reach.From.DistanceTo(place), on = place.DistanceTo(hands);
        if (there < LeastLegMetres || on < LeastLegMetres)
        {
            return false; // in the doorway itself nothing is diffracted
        }

        double v = KnifeEdge.ParameterOfDetour(KnifeEdge.DetourMetres(reach.From, place, hands), true, wavelength);
        double length = (reach.Before < 0 ? 0 : console.DistanceTo(reach.From)) + there + on;
        double diffractionDb = reach.DiffractionDb - (20 * Math.Log10(EdgeKernel.Edge(v)));
        double estimated = EdgeKernel.Apart(v) * WidthFactor(edge, reach.From, place.Z, hands) * Decibels.ToPowerRatio(-(FreeSpaceDb(length) + diffractionDb + reach.LossDb));
        double counted = Counted(estimated, least);
        found = new DiffractedPath { Edge = i, Place = place, Metres = length, DiffractionDb = diffractionDb, Power = counted };
        return counted > 0;
    }

    // A doorway lights its shadow by the waves of both jambs, which cancel as it narrows: with the amplitudes of their shadows and
    // what a mean keeps of their product (StripSum), as a share of the near jamb's alone. What the far one adds is a path of its own.
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

    // Its power by all its edges together, its last leg and the player's body.
    private void Complete(ref DiffractedPath path, in LinkEnds ends, TraceBuffer buffer)
    {
        Span<Point3> corners = stackalloc Point3[MostCorners];
        double diffractionDb = MultipleEdges.LossDb(corners[..Corners(path, ends.End, corners)], wavelength);
        house.Scene.Gather(new Ray(path.Place, ends.End, wavelength), buffer);
        path.Body = ends.BodyFactor(house.Body, corners[1], path.Place);
        path.Power *= Decibels.ToPowerRatio(path.DiffractionDb - diffractionDb) * FrontSum.PowerRatio(buffer.Pieces, house.Losses) * path.Body;
        path.DiffractionDb = diffractionDb;
    }

    // The strongest few, one for each doorway.
    private void Keep(DiffractedPath path, Span<DiffractedPath> found, ref int count)
    {
        int group = graph.Edges[path.Edge].Group;
        for (int k = 0; k < count; k++)
        {
            if (graph.Edges[found[k].Edge].Group == group)
            {
                if (found[k].Power >= path.Power)
                {
                    return;
                }

                found[(k + 1)..count].CopyTo(found[k..]);
                count--;
                break;
            }
        }

        Insert(path, found, ref count);
    }

    // Into its place among the strongest; the weakest is dropped where there is no room.
    private static void Insert(DiffractedPath path, Span<DiffractedPath> found, ref int count)
    {
        int at = count;
        while (at > 0 && found[at - 1].Power < path.Power)
        {
            at--;
        }

        if (at == found.Length)
        {
            return;
        }

        int kept = Math.Min(count, found.Length - 1);
        found[at..kept].CopyTo(found[(at + 1)..]);
        found[at] = path;
        count = kept + 1;
    }

    private EdgeReach[] FindReaches()
    {
        var buffer = new TraceBuffer();
        var first = new EdgeReach[graph.Edges.Length];
        int level = LevelOf(console);
        for (int i = 0; i < first.Length; i++)
        {
            // A console finds its first edge on its own level, as a place does the last: the same paths from both ends.
            Point3 place = graph.Edges[i].At(console.Z);
            double lossDb = graph.Edges[i].IsOpenTo(level)
                ? EdgeGraph.LegDb(house.Scene, house.Losses, console, place, buffer)
                : double.PositiveInfinity;
            first[i] = new EdgeReach(-1, console, console.DistanceTo(place), lossDb, 0);
        }

        // One edge before: the path there, its diffraction, and the leg between the two.
        var best = (EdgeReach[])first.Clone();
        for (int i = 0; i < first.Length; i++)
        {
            Point3 place = graph.Edges[i].At(console.Z);
            foreach ((int to, double lossDb) in graph.LegsFrom(i))
            {
                Point3 next = graph.Edges[to].At(place.Z);
                double leg = place.DistanceTo(next);
                double v = KnifeEdge.ParameterOfDetour(KnifeEdge.DetourMetres(console, place, next), true, wavelength);
                var reach = new EdgeReach(
                    i, place, first[i].Metres + leg, first[i].LossDb + lossDb, -20 * Math.Log10(EdgeKernel.Edge(v)));
                if (Total(reach) < Total(best[to]))
                {
                    best[to] = reach;
                }
            }
        }

        return best;

        double Total(in EdgeReach reach) => FreeSpaceDb(reach.Metres) + reach.LossDb + reach.DiffractionDb;
    }

    private readonly record struct Found(DiffractedPaths Finder, DiffractedPath Path) : IFoundPath
    {
        public double Power => Path.Power;

        public PathBudget Itemise(in LinkEnds ends, TraceBuffer buffer) => Finder.Itemise(Path, ends, buffer);

        public void AddGradients(in LinkEnds ends, TraceBuffer buffer, LossGradients gradients) => Finder.AddGradients(Path, ends, buffer, gradients);
    }
}
