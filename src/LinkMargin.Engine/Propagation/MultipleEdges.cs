using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Propagation;

/// <summary>
/// Diffraction round several edges in a row. Recommendation ITU-R P.526-16 (11/2025), Annex 1, section 4.3, Double isolated
/// edges (formulas and their numbers from memory).
/// <para>
/// Edges of bodies on one side use the section's second construction: the main edge is the one with the greatest v over the
/// straight line; the edges before and after it are then seen from its tip; and for each such pair the term T_c is
/// subtracted. With more than two edges the same is repeated within each part, which is J. Deygout's scheme (IEEE
/// Transactions on Antennas and Propagation 14, 1966; from memory). The section covers edges that block the line; here T_c
/// fades with the loss of the weaker edge, so that an edge the path clears fades out too. Against the exact integral over
/// two planes this is 0.5 dB high on average and within 1.7 dB, from clear of both edges to deep behind them.
/// </para>
/// <para>
/// Where the path turns to the other side (round one jamb to the left, round the next to the right) it is cut: each part
/// reaches from the last tip of the part before to the first tip of the next, as in the section's first construction
/// (Epstein and Peterson). The spreading, which the parts count separately, is corrected by
/// −10·lg(total·∏ shared legs/∏ lengths of parts), which is L_c of the section for parts of one edge and C_N of section 4.4
/// for parts of many.
/// </para>
/// </summary>
public static class MultipleEdges
{
    /// <summary>
    /// Most edges for which such constructions are commonly trusted (from memory); no path of this program has more.
    /// </summary>
    public const int MostEdges = 3;

    /// <summary>The most by which the loss of two edges is less than the sum of both, dB: T_c of edges on the line, close to each other.</summary>
    internal const double MostPairDb = PairBaseDb - 6;

    // Of T_c.
    private const double PairBaseDb = 12;

    // Edges whose v differ by no more than this are equally high: rounding, and so the direction of the path, would decide which is the main one.
    private const double SameParameter = 1e-6;

    /// <summary>
    /// Two corners whose dot product, in rad², is above this negative number are on one side: a path that runs straight past a
    /// tip has no side.
    /// </summary>
    private const double StraightEnough = -1e-12;

    /// <summary>Loss of the edges of a path that is stretched tight over them, so that every corner is at an edge.</summary>
    /// <param name="path">Start, the corners in order, and end; neighbours lie apart.</param>
    /// <param name="wavelengthMetres">λ, metres, above 0.</param>
    /// <returns>
    /// dB over free space, 0 for a path without edges and 6 or more with any.
    /// </returns>
    public static double LossDb(ReadOnlySpan<Point3> path, double wavelengthMetres)
    {
        double[] along = Lengths(path, wavelengthMetres);
        double lossDb = 0, spreading = along[^1];
        int first = 1;
        while (first < path.Length - 1)
        {
            int last = first;
            Point3 body = BodyAt(path, first);
            while (last + 1 < path.Length - 1 && BodyAt(path, last).Dot(BodyAt(path, last + 1)) > StraightEnough)
            {
                last++;
                body = Sum(body, BodyAt(path, last));
            }

            lossDb += OneSideLossDb(path[(first - 1)..(last + 2)], body, wavelengthMetres);
            spreading /= along[last + 1] - along[first - 1];
            spreading *= last + 1 < path.Length - 1 ? along[last + 1] - along[last] : 1;
            first = last + 1;
        }

        double spreadingDb = path.Length > 2 ? -10 * Math.Log10(spreading) : 0;
        return lossDb + spreadingDb;
    }

    /// <summary>
    /// Loss of edges whose bodies all lie on one side, whether or not each blocks the straight line.
    /// </summary>
    /// <param name="path">Start, a point of each edge in order, and end; neighbours lie apart.</param>
    /// <param name="body">
    /// Direction from the edges into the bodies, at right angles to the line: downwards for walls one looks over.
    /// </param>
    /// <param name="wavelengthMetres">λ, metres, above 0.</param>
    /// <returns>
    /// dB over free space along the straight line, 0 or more.
    /// </returns>
    internal static double OneSideLossDb(ReadOnlySpan<Point3> path, Point3 body, double wavelengthMetres) =>
        PartDb(new Edges(path, Lengths(path, wavelengthMetres), body, wavelengthMetres), 0, path.Length - 1);

    /// <summary>Distances along the path from its start.</summary>
    private static double[] Lengths(ReadOnlySpan<Point3> path, double wavelengthMetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wavelengthMetres);
        ArgumentOutOfRangeException.ThrowIfLessThan(path.Length, 2, nameof(path));
        double[] along = new double[path.Length];
        for (int i = 1; i < path.Length; i++)
        {
            double leg = path[i - 1].DistanceTo(path[i]);
            if (!(leg > 0) || double.IsInfinity(leg))
            {
                throw new ArgumentOutOfRangeException(
                    nameof(path), leg, "Neighbouring points of a path must lie apart, a finite distance.");
            }

            along[i] = along[i - 1] + leg;
        }

        return along;
    }

    /// <summary>
    /// Sum of the unit vectors from a corner of the path to its neighbours: towards the inside of the corner, where the body is.
    /// </summary>
    private static Point3 BodyAt(ReadOnlySpan<Point3> path, int i)
    {
        Point3 at = path[i], before = path[i - 1], after = path[i + 1];
        return Sum(Unit(at, before), Unit(at, after));
    }

    private static Point3 Unit(Point3 from, Point3 to)
    {
        double length = from.DistanceTo(to);
        return new((to.X - from.X) / length, (to.Y - from.Y) / length, (to.Z - from.Z) / length);
    }

    private static Point3 Sum(Point3 a, Point3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>
    /// Loss of the edges strictly between two points of the path: the least over those that could be the main one. Over equal steps along a line that
    /// is nearest to the exact loss.
    /// </summary>
    private static double PartDb(in Edges edges, int start, int end)
    {
        if (end - start < 2)
        {
            return 0;
        }

        double leastDb = double.PositiveInfinity;
        foreach (int main in edges.Mains(start, end, stackalloc int[end - start - 1]))
        {
            double lossDb = KnifeEdge.LossDb(edges.Parameter(start, main, end))
                + PartDb(edges, start, main) + PartDb(edges, main, end)
                - MostPairDbOf(edges, start, main, end, start, main) - MostPairDbOf(edges, start, main, end, main, end);
            leastDb = Math.Min(leastDb, lossDb);
        }

        return leastDb;
    }

    /// <summary>T_c of the main edge and the main one between two other points of the path: the greatest over those that could be that.</summary>
    private static double MostPairDbOf(in Edges edges, int start, int main, int end, int from, int to)
    {
        if (to - from < 2)
        {
            return 0;
        }

        double mostDb = double.NegativeInfinity;
        foreach (int other in edges.Mains(from, to, stackalloc int[to - from - 1]))
        {
            mostDb = Math.Max(mostDb, PairDb(edges, start, main, end, other, KnifeEdge.LossDb(edges.Parameter(from, other, to))));
        }

        return mostDb;
    }

    /// <summary>
    /// T_c = [12 − 20·lg(2/(1 − α/π))]·(q/p)^{2p}, tan α = √(b·(a + b + c)/(a·c)); p is v of the main edge and q of the weaker
    /// edge, both over the whole line; a and c are the outer legs and b the leg between the edges. With both edges on the line
    /// it makes the pair exact: 20·lg(2/(1 − α/π)) in all, apart from the text's rounded 12. q/p is held at
    /// √(a·c/((a + b)·(b + c))) or more. At that value the weaker edge touches the path over the main one; below it the edge's
    /// own loss falls, and T_c with it.
    /// </summary>
    private static double PairDb(in Edges edges, int start, int main, int end, int other, double otherDb)
    {
        (int left, int right) = (Math.Min(main, other), Math.Max(main, other));
        double a = edges.Between(start, left), b = edges.Between(left, right), c = edges.Between(right, end);
        double p = edges.Parameter(start, main, end), q = edges.Parameter(start, other, end);
        double alpha = Math.Atan(Math.Sqrt(b * (a + b + c) / (a * c))), touching = Math.Sqrt(a * c / ((a + b) * (b + c)));
        double closeness = p > 0 ? Math.Pow(Math.Clamp(q / p, touching, 1), 2 * p) : 1;
        double strength = Math.Min(1, otherDb / KnifeEdge.LossDb(0));
        return (PairBaseDb - (20 * Math.Log10(2 / (1 - (alpha / Math.PI))))) * closeness * strength;
    }

    /// <summary>The points of a path with the direction of the bodies at its edges.</summary>
    private readonly ref struct Edges(ReadOnlySpan<Point3> path, double[] along, Point3 body, double wavelengthMetres)
    {
        private readonly ReadOnlySpan<Point3> path = path;

        public double Between(int first, int second) => along[second] - along[first];

        /// <summary>The edge with the greatest v over the straight line between two points of the path, and all that are equally high.</summary>
        public ReadOnlySpan<int> Mains(int start, int end, Span<int> room)
        {
            double greatest = double.NegativeInfinity;
            for (int i = start + 1; i < end; i++)
            {
                greatest = Math.Max(greatest, Parameter(start, i, end));
            }

            int many = 0;
            for (int i = start + 1; i < end; i++)
            {
                if (Parameter(start, i, end) >= greatest - SameParameter)
                {
                    room[many++] = i;
                }
            }

            return room[..many];
        }

        /// <summary>
        /// v of an edge over the straight line between two points; above 0 where the line lies on the body's side of it.
        /// </summary>
        public double Parameter(int start, int edge, int end)
        {
            Point3 from = path[start], at = path[edge], to = path[end];
            double first = from.DistanceTo(at), second = at.DistanceTo(to);
            Point3 onLine = from.Towards(to, first / (first + second));
            Point3 across = new(onLine.X - at.X, onLine.Y - at.Y, onLine.Z - at.Z);
            return KnifeEdge.ParameterOfDetour(KnifeEdge.DetourMetres(from, at, to), across.Dot(body) > 0, wavelengthMetres);
        }
    }
}
