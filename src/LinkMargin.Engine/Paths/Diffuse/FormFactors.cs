using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// Where power that leaves each facet of a cell by Lambert's law strikes next: form factors, as areas G_ij = A_i·F_ij. They are
/// symmetric, so that a link has the same loss both ways, and each row adds up to its facet's area, so that no power is lost or created.
/// <para>
/// From a point of a facet the share of another one is the form factor of a polygon, Σ Γ·n / 2π over its edges, clipped at the facet's
/// own plane (J. H. Lambert, Photometria, 1760; formula from memory). The pair gets the mean over a few points of both facets. Shells
/// between two facets hide one from the other; projecting walls do not. Where a row is then too small or too large, because a room has
/// recesses or a facet's outline is a mean, rows are scaled in proportion (Sinkhorn's scaling); what is missing after that is spread
/// over all facets.
/// </para>
/// </summary>
internal sealed class FormFactors
{
    // With more facets than this, each is sampled at its middle only.
    private const int MostSampled = 24;

    private const int ScalingRounds = 20;

    // Two facets this close to one plane see nothing of each other, metres.
    private const double InPlaneMetres = 1e-6;

    // Enough for a facet that a plane has cut; a whole number of vectors.
    private const int MostCorners = 8;

    // Gauss-Legendre rule of two points on a side.
    private const double GaussPoint = 0.21132486540518713;

    private const int Lanes = 8;

    private readonly double[] exchange; // row by row, each with zeros up to a whole number of vectors
    private readonly int stride;

    private FormFactors(double[] areas, double[] square)
    {
        Areas = areas;
        stride = (areas.Length + Lanes - 1) / Lanes * Lanes;
        exchange = new double[areas.Length * stride];
        for (int row = 0; row < areas.Length; row++)
        {
            square.AsSpan(row * areas.Length, areas.Length).CopyTo(exchange.AsSpan(row * stride));
        }
    }

    /// <summary>Area of each facet, square metres.</summary>
    internal double[] Areas { get; }

    /// <summary>The row of one facet, square metres; its sum is the facet's area.</summary>
    internal ReadOnlySpan<double> Of(int facet) => exchange.AsSpan(facet * stride, Areas.Length);

    /// <summary>How many numbers <see cref="Strike"/> writes: one for each facet, and some more up to a whole number of vectors.</summary>
    internal int PaddedCount => stride;

    /// <summary>What strikes each facet, given what leaves each square metre of every facet.</summary>
    /// <param name="leaving">What leaves.</param>
    /// <param name="strikes">Receives what strikes, in its first elements; <see cref="PaddedCount"/> long.</param>
    internal void Strike(ReadOnlySpan<double> leaving, Span<double> strikes)
    {
        int column = 0;
        for (; column + (4 * Lanes) <= strikes.Length; column += 4 * Lanes)
        {
            StrikeFour(leaving, strikes.Slice(column, 4 * Lanes), column);
        }

        for (; column < strikes.Length; column += Lanes)
        {
            StrikeOne(leaving, strikes.Slice(column, Lanes), column);
        }
    }

    // Rows are columns too. Each sum has two parts, of every second row, so that one addition need not wait for the other. Multiplied and
    // then added, every processor gives the same bits.
    private void StrikeFour(ReadOnlySpan<double> leaving, Span<double> strikes, int column)
    {
        Vector512<double> a = default, b = default, c = default, d = default, e = default, f = default, g = default, h = default;
        ref double at = ref MemoryMarshal.GetReference(exchange.AsSpan(column));
        int row = 0;
        for (; row + 2 <= leaving.Length; row += 2)
        {
            Vector512<double> one = Vector512.Create(leaving[row]), other = Vector512.Create(leaving[row + 1]);
            ref double next = ref Unsafe.Add(ref at, stride);
            a += one * Vector512.LoadUnsafe(ref at);
            b += one * Vector512.LoadUnsafe(ref at, Lanes);
            c += one * Vector512.LoadUnsafe(ref at, 2 * Lanes);
            d += one * Vector512.LoadUnsafe(ref at, 3 * Lanes);
            e += other * Vector512.LoadUnsafe(ref next);
            f += other * Vector512.LoadUnsafe(ref next, Lanes);
            g += other * Vector512.LoadUnsafe(ref next, 2 * Lanes);
            h += other * Vector512.LoadUnsafe(ref next, 3 * Lanes);
            at = ref Unsafe.Add(ref next, stride);
        }

        if (row < leaving.Length)
        {
            Vector512<double> one = Vector512.Create(leaving[row]);
            a += one * Vector512.LoadUnsafe(ref at);
            b += one * Vector512.LoadUnsafe(ref at, Lanes);
            c += one * Vector512.LoadUnsafe(ref at, 2 * Lanes);
            d += one * Vector512.LoadUnsafe(ref at, 3 * Lanes);
        }

        (a + e).CopyTo(strikes);
        (b + f).CopyTo(strikes[Lanes..]);
        (c + g).CopyTo(strikes[(2 * Lanes)..]);
        (d + h).CopyTo(strikes[(3 * Lanes)..]);
    }

    private void StrikeOne(ReadOnlySpan<double> leaving, Span<double> strikes, int column)
    {
        Vector512<double> a = default, b = default;
        ref double at = ref MemoryMarshal.GetReference(exchange.AsSpan(column));
        int row = 0;
        for (; row + 2 <= leaving.Length; row += 2)
        {
            a += Vector512.Create(leaving[row]) * Vector512.LoadUnsafe(ref at);
            b += Vector512.Create(leaving[row + 1]) * Vector512.LoadUnsafe(ref at, (nuint)stride);
            at = ref Unsafe.Add(ref at, 2 * stride);
        }

        if (row < leaving.Length)
        {
            a += Vector512.Create(leaving[row]) * Vector512.LoadUnsafe(ref at);
        }

        (a + b).CopyTo(strikes);
    }

    /// <summary>Computes the form factors of a cell's facets.</summary>
    /// <param name="facets">The facets.</param>
    /// <param name="isHidden">Whether something stands between a place and the middle of a facet.</param>
    internal static FormFactors Of(IReadOnlyList<Facet> facets, Func<Point3, Point3, bool> isHidden)
    {
        int count = facets.Count;
        double[] areas = [.. facets.Select(facet => facet.SquareMetres)];
        var exchange = new double[count * count];
        bool isMiddleAlone = count > MostSampled;
        for (int i = 0; i < count; i++)
        {
            Point3[] points = Points(facets[i], isMiddleAlone);
            for (int j = 0; j < count; j++)
            {
                double sum = 0;
                for (int k = 0; k < points.Length && i != j; k++)
                {
                    double share = Share(facets[i], points[k], facets[j]);
                    sum += share > 0 && isHidden(points[k], Middle(facets[j])) ? 0 : share;
                }

                double half = areas[i] / 2 * sum / points.Length;
                exchange[(i * count) + j] += half;
                exchange[(j * count) + i] += half;
            }
        }

        Scale(exchange, areas);
        Fill(exchange, areas);
        return new FormFactors(areas, exchange);
    }

    private static Point3 Middle(Facet facet) => facet.Outline[0].Towards(facet.Outline[2], 0.5);

    // Share of what a point of a facet sends out that strikes another facet.
    private static double Share(Facet from, Point3 at, Facet to)
    {
        if (from.Normal is not { } normal || (to.Normal is { } facing && facing.Dot(at - to.Outline[0]) <= InPlaneMetres))
        {
            return 0; // behind it, or in one plane with it, where rounding would decide
        }

        // Clipped at the facet's own plane: at most one corner more than four.
        Span<Point3> seen = stackalloc Point3[MostCorners + 1];
        int count = 0;
        double highest = double.NegativeInfinity;
        for (int k = 0; k < to.Outline.Length; k++)
        {
            Point3 a = to.Outline[k] - at, b = to.Outline[(k + 1) % to.Outline.Length] - at;
            double before = a.Dot(normal), after = b.Dot(normal);
            highest = Math.Max(highest, before);
            if (before >= 0)
            {
                seen[count++] = a;
            }

            if (before >= 0 != after >= 0)
            {
                double t = before / (before - after);
                seen[count++] = a.Towards(b, t);
            }
        }

        if (highest <= InPlaneMetres)
        {
            return 0;
        }

        Span<double> sizes = stackalloc double[MostCorners], dots = stackalloc double[MostCorners], heights = stackalloc double[MostCorners];
        sizes.Clear();
        dots.Clear();
        for (int k = 0; k < count; k++)
        {
            Point3 a = seen[k], b = seen[k + 1 < count ? k + 1 : 0];
            Point3 cross = a.Cross(b);
            double size = cross.Length;
            (sizes[k], dots[k], heights[k]) = (size, a.Dot(b), size > 0 ? cross.Dot(normal) / size : 0);
        }

        ArcTangent.Of(Vector512.Create<double>(sizes), Vector512.Create<double>(dots)).CopyTo(dots);
        double sum = 0;
        for (int k = 0; k < count; k++)
        {
            sum += dots[k] * heights[k];
        }

        return Math.Abs(sum) / (2 * Math.PI);
    }

    // Four Gauss points, or the middle alone. Facets have four corners.
    private static Point3[] Points(Facet facet, bool isMiddleAlone)
    {
        Point3 corner = facet.Outline[0], along = facet.Outline[1] - corner, up = facet.Outline[^1] - corner;
        double[] places = isMiddleAlone ? [0.5] : [GaussPoint, 1 - GaussPoint];
        return
        [
            .. places.SelectMany(u => places.Select(v => corner + (u * along) + (v * up))),
        ];
    }

    // Scales rows and columns by one factor for each facet, until each row is about its facet's area.
    private static void Scale(double[] exchange, double[] areas)
    {
        int count = areas.Length;
        double[] factors = [.. areas.Select(_ => 1.0)];
        for (int round = 0; round < ScalingRounds; round++)
        {
            // All at once, so that the order of the facets does not matter.
            double[] next = new double[count];
            for (int i = 0; i < count; i++)
            {
                double row = 0;
                for (int j = 0; j < count; j++)
                {
                    row += exchange[(i * count) + j] * factors[j];
                }

                next[i] = row > 0 ? Math.Sqrt(factors[i] * areas[i] / row) : 0;
            }

            factors = next;
        }

        for (int i = 0; i < count; i++)
        {
            for (int j = 0; j < count; j++)
            {
                exchange[(i * count) + j] *= factors[i] * factors[j];
            }
        }
    }

    // Shrinks everything until no row is above its facet's area, and spreads what each row lacks in proportion to what the others lack.
    private static void Fill(double[] exchange, double[] areas)
    {
        int count = areas.Length;
        double[] rows = [.. Enumerable.Range(0, count).Select(i => exchange.AsSpan(i * count, count).ToArray().Sum())];
        double scale = Enumerable.Range(0, count).Min(i => rows[i] > 0 ? Math.Min(1, areas[i] / rows[i]) : 1);
        double[] left = [.. Enumerable.Range(0, count).Select(i => Math.Max(0, areas[i] - (scale * rows[i])))];
        double all = left.Sum();
        for (int i = 0; i < count; i++)
        {
            for (int j = 0; j < count; j++)
            {
                ref double at = ref exchange[(i * count) + j];
                at = (scale * at) + (all > 0 ? left[i] * left[j] / all : 0);
            }
        }
    }
}
