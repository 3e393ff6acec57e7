using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Links;

/// <summary>
/// Adds up what passes through the pieces that a ray's front meets, and beside them, to a local mean.
/// <para>
/// The ends of the pieces cut the front into strips; in each the amplitude τ is the product of the pieces that cover it. By
/// Kirchhoff's integral the field is the strip on the line, τ0, and for each other strip its difference to τ0 times the
/// share of the front it holds. A strip that passes more than the line does lights the shadow from the side: its share is
/// that of a knife edge's shadow (<see cref="EdgeKernel.Beyond"/>). A strip that passes less takes from a lit receiver: on
/// average over a wavelength almost nothing once its edge is clear of the line (<see cref="EdgeKernel.LostBeyond"/>). As the
/// line comes up to an edge, both turn into the same half.
/// </para>
/// <para>
/// What comes round the two sides of an obstacle has no fixed phase between: over a few wavelengths powers add, not
/// amplitudes (the average of Recommendation ITU-R P.526-16, section 5.1), so their product is taken away again, less and
/// less as the line nears an edge.
/// </para>
/// </summary>
internal static class FrontSum
{
    private const int MostOnStack = 128;

    // Ends nearer to each other on the front are one: where walls join, rounding must leave neither a slit nor an overlap,
    // since the least slit on the line would count as an edge.
    private const double SameEdge = 1e-6;

    /// <summary>Power that passes, as a share of free space.</summary>
    internal static double PowerRatio(ReadOnlySpan<Piece> pieces, LossTables losses)
    {
        Span<double> amplitudes = pieces.Length <= MostOnStack ? stackalloc double[pieces.Length] : new double[pieces.Length];
        for (int i = 0; i < pieces.Length; i++)
        {
            amplitudes[i] = losses.Amplitude(pieces[i]);
        }

        return PowerRatio(pieces, amplitudes);
    }

    /// <summary>The same for amplitudes worked out before; they are used up.</summary>
    internal static double PowerRatio(ReadOnlySpan<Piece> pieces, Span<double> amplitudes)
    {
        Span<double> cuts = pieces.Length <= MostOnStack
            ? stackalloc double[(2 * pieces.Length) + 2]
            : new double[(2 * pieces.Length) + 2];
        Span<double> strips = pieces.Length <= MostOnStack
            ? stackalloc double[(2 * pieces.Length) + 1]
            : new double[(2 * pieces.Length) + 1];

        double everywhere = 1;
        int count = 0;
        cuts[count++] = -EdgeKernel.Reach;
        for (int i = 0; i < pieces.Length; i++)
        {
            ref readonly Piece piece = ref pieces[i];
            if (piece.Low <= -EdgeKernel.Reach && piece.High >= EdgeKernel.Reach)
            {
                everywhere *= amplitudes[i];
                amplitudes[i] = 1;
                continue;
            }

            AddCut(cuts, ref count, piece.Low);
            AddCut(cuts, ref count, piece.High);
        }

        if (count == 1)
        {
            return everywhere * everywhere;
        }

        Sort(cuts[..count]);
        count = KeepApart(cuts[..count]);
        int middle = 0;
        for (int s = 0; s < count; s++)
        {
            double low = cuts[s], high = s + 1 < count ? cuts[s + 1] : EdgeKernel.Reach;
            double at = (low + high) / 2, through = 1;
            for (int i = 0; i < pieces.Length; i++)
            {
                if (pieces[i].Low < at && pieces[i].High > at)
                {
                    through *= amplitudes[i];
                }
            }

            strips[s] = through;
            middle = low <= 0 ? s : middle;
        }

        return everywhere * everywhere * Sum(cuts[..count], strips[..count], middle);
    }

    private static double Sum(Span<double> cuts, Span<double> strips, int middle)
    {
        double line = strips[middle];
        double clear = 1; // 1: no edge that matters near the line; 0: the line runs through an edge
        for (int s = 1; s < cuts.Length; s++)
        {
            double greater = Math.Max(strips[s - 1], strips[s]);
            double step = greater > 0 ? Math.Abs(strips[s] - strips[s - 1]) / greater : 0;
            clear = Math.Min(clear, 1 - (2 * EdgeKernel.Beyond(Math.Abs(cuts[s])) * step));
        }

        double left = 0, right = 0;
        for (int s = middle + 1; s < cuts.Length; s++)
        {
            left += Share(strips[s] - line, cuts[s], s + 1 < cuts.Length ? cuts[s + 1] : double.PositiveInfinity, clear);
        }

        for (int s = middle - 1; s >= 0; s--)
        {
            right += Share(strips[s] - line, -cuts[s + 1], s > 0 ? -cuts[s] : double.PositiveInfinity, clear);
        }

        double sum = line + left + right;
        return Math.Max(0, (sum * sum) - (2 * clear * Math.Max(0, left) * Math.Max(0, right)));
    }

    private static double Share(double difference, double near, double far, double clear)
    {
        near = Math.Max(0, near);
        double front = EdgeKernel.Beyond(near) - EdgeKernel.Beyond(far);
        if (difference >= 0)
        {
            return difference * front;
        }

        double lost = EdgeKernel.LostBeyond(near) - EdgeKernel.LostBeyond(far);
        return difference * (((1 - clear) * front) + (clear * lost));
    }

    private static void AddCut(Span<double> cuts, ref int count, double v)
    {
        if (v > -EdgeKernel.Reach && v < EdgeKernel.Reach)
        {
            cuts[count++] = v;
        }
    }

    // Keeps one of several ends in one place; returns how many are left.
    private static int KeepApart(Span<double> cuts)
    {
        int kept = 1;
        for (int i = 1; i < cuts.Length; i++)
        {
            if (cuts[i] - cuts[kept - 1] > SameEdge)
            {
                cuts[kept++] = cuts[i];
            }
        }

        return kept;
    }

    private static void Sort(Span<double> cuts)
    {
        for (int i = 1; i < cuts.Length; i++)
        {
            double moving = cuts[i];
            int j = i - 1;
            while (j >= 0 && cuts[j] > moving)
            {
                cuts[j + 1] = cuts[j];
                j--;
            }

            cuts[j + 1] = moving;
        }
    }
}
