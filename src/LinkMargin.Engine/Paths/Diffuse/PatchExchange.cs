using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// The exchange of power between patches (<see cref="PatchLayout"/>). What a patch receives from the others of its cell strikes all of its
/// facets evenly, so everything that follows from a first strike needs one number for each patch: W/m² that strike it.
/// </summary>
internal sealed class PatchExchange
{
    private readonly SurfaceExchange exchange;
    private readonly PatchLayout layout;
    private readonly double[] squareMetres; // of each patch, and of the things in each cell
    private readonly double[] perSquareMetre; // of each patch, 1 over its area by the form factors
    private readonly double[] reflecting; // square metres, times what they reflect
    private readonly double[] passing; // of each pair, square metres times what they pass
    private readonly double[] free; // share of each cell's rays that strike its patches
    private readonly double[] whole; // square metres of each cell that a ray may strike

    internal PatchExchange(SurfaceExchange exchange)
    {
        this.exchange = exchange;
        layout = exchange.Layout;
        CellCount = exchange.CellCount;
        (squareMetres, perSquareMetre, reflecting) = (new double[layout.Count], new double[layout.Count], new double[layout.Count]);
        passing = new double[layout.Pairs];
        (free, whole) = (new double[CellCount], new double[CellCount]);
        ReadOnlySpan<double> areas = exchange.Areas, reflects = exchange.ReflectedShares, passes = exchange.PassedShares;
        ReadOnlySpan<int> patchOf = layout.OfNode, pairOf = layout.PairOf;
        for (int node = 0; node < patchOf.Length; node++)
        {
            squareMetres[patchOf[node]] += areas[node];
            reflecting[patchOf[node]] += areas[node] * reflects[node];
            if (pairOf[node] >= 0)
            {
                passing[pairOf[node]] += areas[node] * passes[node];
            }
        }

        for (int cell = 0; cell < CellCount; cell++)
        {
            (free[cell], whole[cell]) = (exchange.FreeShare(cell), exchange.SquareMetresOf(cell));
            int things = exchange.Things(cell);
            squareMetres[layout.Things(cell)] = areas[things];
            reflecting[layout.Things(cell)] = areas[things] * reflects[things];
            double[] patchAreas = layout.Factors[cell].Areas;
            for (int i = 0; i < patchAreas.Length; i++)
            {
                perSquareMetre[layout.FirstOf(cell) + i] = 1 / patchAreas[i];
            }
        }
    }

    /// <summary>How many cells there are, without outdoors.</summary>
    internal int CellCount { get; }

    /// <summary>The layout of the patches.</summary>
    internal PatchLayout Layout => layout;

    /// <summary>Area of each patch, and of the things in each cell, square metres.</summary>
    internal ReadOnlySpan<double> SquareMetres => squareMetres;

    /// <summary>Share of what strikes a cell's surfaces evenly that they reflect.</summary>
    internal double ReflectedShare(int cell)
    {
        double sum = 0;
        for (int patch = layout.FirstOf(cell); patch <= layout.Things(cell); patch++)
        {
            sum += reflecting[patch];
        }

        return sum / whole[cell];
    }

    /// <summary>The cells to which a patch of a cell passes more than a share of what strikes it.</summary>
    internal IEnumerable<int> CellsBehind(int cell, double leastShare)
    {
        for (int patch = layout.FirstOf(cell); patch < layout.Things(cell); patch++)
        {
            for (int pair = layout.FirstPair[patch]; pair < layout.FirstPair[patch + 1]; pair++)
            {
                if (passing[pair] > leastShare * squareMetres[patch])
                {
                    yield return CellOf(layout.Behind[pair]);
                }
            }
        }
    }

    /// <summary>What leaves the patches and the things of one cell, W, given what strikes each, W/m².</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="densities">What strikes.</param>
    /// <param name="withReflection">Whether it is reflected; otherwise only what passes goes on.</param>
    /// <param name="sent">Receives what leaves.</param>
    /// <returns>The sum.</returns>
    internal double Send(int cell, ReadOnlySpan<double> densities, bool withReflection, Span<double> sent)
    {
        int start = layout.FirstOf(cell), things = layout.Things(cell);
        ReadOnlySpan<int> firstPair = layout.FirstPair.Slice(start, things - start + 1), behind = layout.Behind;
        Span<double> sends = sent.Slice(start, things - start);
        ReadOnlySpan<double> struck = densities.Slice(start, sends.Length), reflected = reflecting.AsSpan(start, sends.Length);
        double all = 0;
        for (int i = 0; i < sends.Length; i++)
        {
            double sum = withReflection ? reflected[i] * struck[i] : 0;
            for (int pair = firstPair[i]; pair < firstPair[i + 1]; pair++)
            {
                sum += passing[pair] * densities[behind[pair]];
            }

            sends[i] = sum;
            all += sum;
        }

        sent[things] = withReflection ? reflecting[things] * densities[things] : 0;
        return all + sent[things];
    }

    /// <summary>Adds what power that leaves the patches and the things of one cell strikes next.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="sent">What leaves, W.</param>
    /// <param name="densities">Receives what strikes, W/m².</param>
    internal void Strike(int cell, ReadOnlySpan<double> sent, Span<double> densities)
    {
        FormFactors factors = layout.Factors[cell];
        int start = layout.FirstOf(cell), things = layout.Things(cell);
        ReadOnlySpan<double> sends = sent[start..things], per = perSquareMetre.AsSpan(start, sends.Length);
        using Scratch scratch = Scratch.Open();
        Span<double> from = scratch.Of<double>(sends.Length), to = scratch.Of<double>(factors.PaddedCount);
        double all = sent[things], share = free[cell];
        for (int i = 0; i < from.Length; i++)
        {
            from[i] = share * per[i] * sends[i];
            all += sends[i];
        }

        factors.Strike(from, to);
        double byThings = sent[things] / whole[cell];
        Span<double> struck = densities.Slice(start, from.Length);
        for (int i = 0; i < struck.Length; i++)
        {
            struck[i] += (per[i] * to[i]) + byThings;
        }

        densities[things] += all / whole[cell];
    }

    /// <summary>What follows at once from what leaves the patches and things: what it strikes next, W/m².</summary>
    internal void Follow(ReadOnlySpan<double> sent, Span<double> densities)
    {
        densities.Clear();
        for (int cell = 0; cell < CellCount; cell++)
        {
            Strike(cell, sent, densities);
        }
    }

    /// <summary>What passes to each patch from the other faces of its facets, W, given what strikes each facet, W.</summary>
    internal void GatherPassed(ReadOnlySpan<double> strikes, Span<double> sent)
    {
        ReadOnlySpan<int> patchOf = layout.OfNode, other = exchange.OtherFaces;
        ReadOnlySpan<double> passes = exchange.PassedShares;
        sent.Clear();
        for (int node = 0; node < patchOf.Length; node++)
        {
            sent[patchOf[node]] += passes[node] * strikes[other[node]];
        }
    }

    /// <summary>A share of what strikes each patch and the things in each cell, W.</summary>
    /// <param name="atFirst">What strikes each facet first, W.</param>
    /// <param name="densities">What strikes each patch besides, W/m².</param>
    /// <param name="shares">The share, by facet.</param>
    /// <param name="sent">Receives the sums.</param>
    internal void GatherReflected(ReadOnlySpan<double> atFirst, ReadOnlySpan<double> densities, ReadOnlySpan<double> shares, Span<double> sent)
    {
        ReadOnlySpan<int> patchOf = layout.OfNode;
        ReadOnlySpan<double> areas = exchange.Areas;
        sent.Clear();
        for (int node = 0; node < patchOf.Length; node++)
        {
            int patch = patchOf[node];
            sent[patch] += shares[node] * (atFirst[node] + (areas[node] * densities[patch]));
        }

        for (int cell = 0; cell < CellCount; cell++)
        {
            int things = layout.Things(cell), node = exchange.Things(cell);
            sent[things] = shares[node] * (atFirst[node] + (areas[node] * densities[things]));
        }
    }

    /// <summary>Adds all that patches and things reflect, W.</summary>
    internal void AddReflected(ReadOnlySpan<double> densities, Span<double> sent)
    {
        for (int i = 0; i < sent.Length; i++)
        {
            sent[i] += reflecting[i] * densities[i];
        }
    }

    /// <summary>
    /// What leaves each facet, and the things in each cell, W/m²: of what strikes first, and before any mirror, what others than mirrors reflect; all
    /// that is reflected of what strikes once after a mirror; and of the rest what is reflected and what passes from behind.
    /// </summary>
    /// <param name="atFirst">What strikes each facet first, W.</param>
    /// <param name="first">What strikes each patch besides, before any reflection, W/m².</param>
    /// <param name="once">The same after one reflection by a mirror.</param>
    /// <param name="all">The rest.</param>
    internal double[] Leaving(ReadOnlySpan<double> atFirst, ReadOnlySpan<double> first, ReadOnlySpan<double> once, ReadOnlySpan<double> all)
    {
        ReadOnlySpan<int> patchOf = layout.OfNode, other = exchange.OtherFaces;
        ReadOnlySpan<double> areas = exchange.Areas, passes = exchange.PassedShares, reflects = exchange.ReflectedShares, scatters = exchange.ScatteredShares;
        var leaving = new double[areas.Length];
        for (int node = 0; node < leaving.Length; node++)
        {
            // Indoors, then outdoors, then the things of each cell.
            int patch = node < patchOf.Length ? patchOf[node] : node - exchange.Things(0) is var cell and >= 0 ? layout.Things(cell) : -1;
            double passed = other[node] < patchOf.Length && passes[node] > 0 ? passes[node] * all[patchOf[other[node]]] : 0;
            double bare = areas[node] > 0 ? atFirst[node] / areas[node] : 0;
            leaving[node] = !(areas[node] > 0) ? 0
                : patch < 0 ? (scatters[node] * bare) + passed
                : (scatters[node] * (bare + first[patch])) + (reflects[node] * (once[patch] + all[patch])) + passed;
        }

        return leaving;
    }

    /// <summary>The sum over the facets of each cell, and the things in it.</summary>
    internal void SumCells(ReadOnlySpan<double> facets, Span<double> sums)
    {
        for (int cell = 0; cell < CellCount; cell++)
        {
            double sum = facets[exchange.Things(cell)];
            for (int node = exchange.FirstOf(cell); node < exchange.FirstOf(cell + 1); node++)
            {
                sum += facets[node];
            }

            sums[cell] = sum;
        }
    }

    /// <summary>What strikes each facet, and the things in each cell, W. What strikes outdoors first is all there is.</summary>
    internal double[] Strikes(double[] atFirst, ReadOnlySpan<double> densities)
    {
        double[] strikes = [.. atFirst];
        ReadOnlySpan<int> patchOf = layout.OfNode;
        ReadOnlySpan<double> areas = exchange.Areas;
        for (int node = 0; node < patchOf.Length; node++)
        {
            strikes[node] += areas[node] * densities[patchOf[node]];
        }

        for (int cell = 0; cell < CellCount; cell++)
        {
            strikes[exchange.Things(cell)] += squareMetres[layout.Things(cell)] * densities[layout.Things(cell)];
        }

        return strikes;
    }

    private int CellOf(int patch)
    {
        int cell = 0;
        while (layout.Things(cell) < patch)
        {
            cell++;
        }

        return cell;
    }
}
