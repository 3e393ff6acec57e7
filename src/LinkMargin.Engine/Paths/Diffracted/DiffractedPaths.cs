using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Paths.Body;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>
/// The diffracted paths from one console, round one edge or two. Everything about a path is the same from both its ends: where it
/// passes its edges, what its legs lose, how much of it counts, and which paths are added up.
/// <para>
/// A path passes its edges at the heights of a straight line drawn out along it. Each leg is a front of its own
/// (<see cref="EdgeGraph.LegRatio"/>): the legs at both ends run at the height of the console and of the hands as far as the edge
/// reaches, so that they depend on one end alone. The edges are diffracted together (<see cref="MultipleEdges"/>).
/// </para>
/// <para>
/// What passes an edge within reach of a straight line is part of that line's front already: of the direct path, or of the
/// path round the other edge alone. A path counts only as far as each of its edges is beyond that reach of the line between
/// its neighbours, so the same energy is never counted twice. What bends round other edges counts where next to nothing else arrives
/// (<see cref="FarFronts"/>).
/// </para>
/// </summary>
internal sealed class DiffractedPaths : PathFinder
{
    /// <summary>Most paths that are kept. Each jamb of a doorway and each side of a stair void has one.</summary>
    internal const int Most = 24;

    /// <summary>Corners of a path round two edges.</summary>
    internal const int MostCorners = 4;

    // Least loss of one edge out of reach, and of two: together they lose at most 6 dB less than their sum (T_c).
    private static readonly double OneEdgeDb = KnifeEdge.LossDb(EdgeKernel.ApartFrom);
    private static readonly double TwoEdgesDb = (2 * OneEdgeDb) - MultipleEdges.MostPairDb;

    private readonly TracedHouse house;
    private readonly EdgeGraph graph;
    private readonly Point3 console;
    private readonly double wavelength;
    private readonly double leastDetourMetres; // of an edge that is out of reach
    private readonly double[] firstDb; // loss of the obstacles on the leg to each edge; ∞ where none leads there
    private readonly int[] order; // edges, least loss first

    internal DiffractedPaths(EdgeGraph graph, Point3 console)
    {
        this.graph = graph;
        this.console = console;
        house = graph.House;
        wavelength = house.WavelengthMetres;
        leastDetourMetres = EdgeKernel.ApartFrom * EdgeKernel.ApartFrom / 4 * wavelength;
        var buffer = new TraceBuffer();
        int level = graph.LevelOf(console);
        firstDb = [.. graph.Edges.Select(edge => edge.IsOpenTo(level)
            ? Decibels.LossFromPowerRatio(graph.EndLegRatio(edge, console, buffer))
            : double.PositiveInfinity)];
        order = [.. Enumerable.Range(0, firstDb.Length).Where(i => firstDb[i] < double.PositiveInfinity).OrderBy(i => firstDb[i])];
    }

    internal override void FindTo(in LinkEnds ends, double leastPower, TraceBuffer buffer, ref FoundPaths found)
    {
        Span<DiffractedPath> paths = stackalloc DiffractedPath[Most];
        RoundEdges round = default;
        foreach (ref readonly DiffractedPath path in paths[..To(ends, leastPower, buffer, paths)])
        {
            round = round.With(path, console, ends.End, wavelength);
            found.Add(new Found(this, path));
        }

        if (graph.FarFronts.Of(ends, leastPower, round, buffer) is { Power: > 0 } far)
        {
            found.Add(new FoundFar(this, leastPower, round, far));
        }
    }

    /// <summary>The strongest paths that add more than a least power.</summary>
    /// <param name="ends">The link, which starts at this console.</param>
    /// <param name="least">Power below which a path does not count.</param>
    /// <param name="buffer">The thread's own.</param>
    /// <param name="found">Receives the paths; has room for as many as are wanted.</param>
    /// <returns>How many there are.</returns>
    internal int To(in LinkEnds ends, double least, TraceBuffer buffer, Span<DiffractedPath> found)
    {
        using Scratch scratch = Scratch.Open();
        Span<double> lastRatios = scratch.Of<double>(graph.Edges.Length);
        lastRatios.Fill(double.NaN); // not computed yet
        var strongest = new StrongestPaths(found, least);
        double straightDb = FreeSpaceDb(ends.DistanceMetres);
        int level = graph.LevelOf(ends.End);
        foreach (int i in order)
        {
            // No path is shorter than the straight line.
            if (straightDb + OneEdgeDb + firstDb[i] > MostDb(strongest))
            {
                break;
            }

            if (graph.Edges[i].IsOpenTo(level))
            {
                Try(i, i, firstDb[i], ends, buffer, lastRatios, ref strongest);
            }
        }

        foreach (int i in order)
        {
            if (straightDb + TwoEdgesDb + firstDb[i] > MostDb(strongest))
            {
                break;
            }

            foreach ((int to, double lossDb) in graph.LegsFrom(i, buffer))
            {
                if (straightDb + TwoEdgesDb + firstDb[i] + lossDb > MostDb(strongest))
                {
                    break;
                }

                if (graph.Edges[to].IsOpenTo(level))
                {
                    Try(i, to, firstDb[i] + lossDb, ends, buffer, lastRatios, ref strongest);
                }
            }
        }

        int left = SharedEnergy.Divide(graph.Edges, found[..strongest.Count], console, ends.End, wavelength), count = 0;
        foreach (DiffractedPath path in found[..left])
        {
            if (Counted(path.Power, least) is double power and > 0)
            {
                found[count++] = path with { Power = power };
            }
        }

        return count;

        static double MostDb(in StrongestPaths strongest) => strongest.LeastPower > 0 ? -Decibels.FromPowerRatio(strongest.LeastPower / BodyShadow.MostFactor) : double.PositiveInfinity;
    }

    // Adds the path round two edges, or round one where they are the same, if it counts.
    private void Try(
        int first,
        int last,
        double lossDb,
        in LinkEnds ends,
        TraceBuffer buffer,
        Span<double> lastRatios,
        ref StrongestPaths strongest)
    {
        Point3 hands = ends.End;
        DiffractedPath path = Between(first, last, hands);
        Point3 afterFirst = path.HasTwoEdges ? path.LastPlace : hands, beforeLast = path.HasTwoEdges ? path.FirstPlace : console;
        double firstDetour = KnifeEdge.DetourMetres(console, path.FirstPlace, afterFirst);
        double lastDetour = path.HasTwoEdges ? KnifeEdge.DetourMetres(beforeLast, path.LastPlace, hands) : firstDetour;
        if (firstDetour <= leastDetourMetres || lastDetour <= leastDetourMetres)
        {
            return;
        }

        double firstV = KnifeEdge.ParameterOfDetour(firstDetour, true, wavelength), lastV = KnifeEdge.ParameterOfDetour(lastDetour, true, wavelength);
        double edgesDb = path.HasTwoEdges
            ? KnifeEdge.LossDb(firstV) + KnifeEdge.LossDb(lastV) - MultipleEdges.MostPairDb
            : KnifeEdge.LossDb(firstV);
        double unhindered = EdgeKernel.Apart(firstV) * (path.HasTwoEdges ? EdgeKernel.Apart(lastV) : 1) * house.FreeSpaceRatio(path.Metres);
        path.Body = ends.BodyFactor(house.Body, path.FirstPlace, path.LastPlace);
        unhindered *= path.Body;
        if (unhindered * Decibels.ToPowerRatio(-(edgesDb + lossDb)) <= strongest.LeastPower)
        {
            return;
        }

        path.DiffractionDb = path.HasTwoEdges ? MultipleEdges.LossDb([console, path.FirstPlace, path.LastPlace, hands], wavelength) : edgesDb;
        double width = graph.Edges[first].WidthFactor(console, path.FirstPlace.Z, afterFirst, wavelength)
            * (path.HasTwoEdges ? graph.Edges[last].WidthFactor(beforeLast, path.LastPlace.Z, hands, wavelength) : 1);
        double most = unhindered * width * Decibels.ToPowerRatio(-(path.DiffractionDb + lossDb));
        if (most <= strongest.LeastPower)
        {
            return;
        }

        if (double.IsNaN(lastRatios[last]))
        {
            lastRatios[last] = graph.EndLegRatio(graph.Edges[last], hands, buffer);
        }

        path.Power = most * lastRatios[last];
        strongest.Add(path);
    }

    // A path's places and length.
    private DiffractedPath Between(int first, int last, Point3 hands)
    {
        DiffractionEdge one = graph.Edges[first], other = graph.Edges[last];
        double before = console.Plan.DistanceTo(one.Plan), between = one.Plan.DistanceTo(other.Plan), after = other.Plan.DistanceTo(hands.Plan);
        double whole = before + between + after, rise = hands.Z - console.Z;
        double firstShare = whole > 0 ? before / whole : 0.5, lastShare = whole > 0 ? after / whole : 0.5;
        Point3 firstPlace = one.At(console.Z + (firstShare * rise));
        Point3 lastPlace = first == last ? firstPlace : other.At(hands.Z - (lastShare * rise));
        return new DiffractedPath
        {
            First = first,
            Last = last,
            FirstPlace = firstPlace,
            LastPlace = lastPlace,
            Metres = console.DistanceTo(firstPlace) + firstPlace.DistanceTo(lastPlace) + lastPlace.DistanceTo(hands),
        };
    }

    private PathBudget Itemise(in DiffractedPath path, in LinkEnds ends, TraceBuffer buffer)
    {
        var corners = new Point3[MostCorners];
        Array.Resize(ref corners, path.Corners(console, ends.End, corners));
        var crossings = new List<Crossing>();
        double run = 0;
        for (int i = 0; i + 1 < corners.Length; i++)
        {
            (Point3 from, Point3 to) = Leg(path, ends.End, i);
            crossings.AddRange(Itemisation.Crossings(house.Scene, from, to, buffer, wholeFloors: true, run));
            run += corners[i].DistanceTo(corners[i + 1]);
        }

        var traced = new TracedPath(PathKind.Diffracted, corners, path.Metres, crossings);
        return Itemisation.Budget(house, traced, PathLoss.FromPowerRatio(path.Power), new PathItems
        {
            DiffractionDb = path.DiffractionDb,
            BodyDb = Decibels.LossFromPowerRatio(path.Body),
            Turns = Turns(path),
        });
    }

    // What a path goes through or round, in order from the console.
    private PathTurn[] Turns(in DiffractedPath path)
    {
        double before = console.DistanceTo(path.FirstPlace);
        PathTurn last = graph.Edges[path.Last].TurnAt(before + path.FirstPlace.DistanceTo(path.LastPlace));
        return path.HasTwoEdges ? [graph.Edges[path.First].TurnAt(before), last] : [last];
    }

    private void AddGradients(in DiffractedPath path, in LinkEnds ends, TraceBuffer buffer, LossGradients gradients)
    {
        for (int i = 0; i < (path.HasTwoEdges ? 3 : 2); i++)
        {
            (Point3 from, Point3 to) = Leg(path, ends.End, i);
            house.Scene.Gather(new Ray(from, to, wavelength), buffer);
            gradients.AddFront(buffer.Pieces);
        }
    }

    // A leg, by number from the console, as its loss is computed.
    private (Point3 From, Point3 To) Leg(in DiffractedPath path, Point3 hands, int leg) =>
        leg == 0 ? (console, graph.Edges[path.First].At(console.Z))
        : leg == 1 && path.HasTwoEdges ? EdgeGraph.LegBetween(graph.Edges[path.First], graph.Edges[path.Last])
        : (graph.Edges[path.Last].At(hands.Z), hands);

    private PathBudget Itemise(in FarPower far, in LinkEnds ends, TraceBuffer buffer)
    {
        Crossing[] crossings = Itemisation.Crossings(house.Scene, ends.Start, ends.End, buffer, wholeFloors: true);
        var traced = new TracedPath(PathKind.Diffracted, [ends.Start, ends.End], ends.DistanceMetres, crossings);
        return Itemisation.Budget(house, traced, PathLoss.FromPowerRatio(far.Power), new PathItems
        {
            BodyDb = Decibels.LossFromPowerRatio(far.Power / far.Bare),
        });
    }

    private double FreeSpaceDb(double metres) => FreeSpaceLoss.Db(metres, house.Scene.Band.Equivalent);

    private readonly record struct Found(DiffractedPaths Finder, DiffractedPath Path) : IFoundPath
    {
        public double Power => Path.Power;

        public PathBudget Itemise(in LinkEnds ends, TraceBuffer buffer) => Finder.Itemise(Path, ends, buffer);

        public void AddGradients(in LinkEnds ends, TraceBuffer buffer, LossGradients gradients) => Finder.AddGradients(Path, ends, buffer, gradients);
    }

    private readonly record struct FoundFar(DiffractedPaths Finder, double LeastPower, RoundEdges Round, FarPower Far) : IFoundPath
    {
        public double Power => Far.Power;

        public PathBudget Itemise(in LinkEnds ends, TraceBuffer buffer) => Finder.Itemise(Far, ends, buffer);

        public void AddGradients(in LinkEnds ends, TraceBuffer buffer, LossGradients gradients) =>
            Finder.graph.FarFronts.Of(ends, LeastPower, Round, buffer, gradients, Far.Power);
    }
}
