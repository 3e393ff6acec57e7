using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// The exchange of power between all facets of a house: what each sends into its cell, by reflection or from behind, strikes the others
/// by their form factors, or the things in the cell, or the furnishing.
/// <para>
/// Let e be what leaves each facet, I what strikes it. Then I = Fᵀ·e + what strikes it first, and e = R·I + T·I′ with I′ what strikes the
/// other face. <see cref="ExchangeSolver"/> solves that.
/// </para>
/// </summary>
internal sealed class SurfaceExchange
{
    private readonly CellSurfaces surfaces;
    private readonly int[] first; // node of each cell's first facet; outdoors last, then the things of each cell
    private readonly int[] partner; // of each facet, its other face; itself, which passes nothing, where there is none
    private readonly double[] areas;
    private readonly double[] reflects;
    private readonly double[] mirrors; // the part of it that mirrors reflect
    private readonly double[] passes;
    private readonly double[] whole; // of each cell, all that a ray may strike, square metres

    internal SurfaceExchange(CellSurfaces surfaces, Func<Sheet[], SheetPower> powerOf)
    {
        this.surfaces = surfaces;
        int cells = surfaces.Count;
        first = new int[cells + 2];
        for (int cell = 0; cell <= cells; cell++)
        {
            first[cell + 1] = first[cell] + surfaces.Of(CellAt(cell)).Count;
        }

        int nodes = first[^1] + cells;
        (partner, areas, reflects, mirrors, passes) = ([.. Enumerable.Range(0, nodes)], new double[nodes], new double[nodes], new double[nodes], new double[nodes]);
        whole = new double[cells];
        for (int cell = 0; cell <= cells; cell++)
        {
            List<Facet> facets = surfaces.Of(CellAt(cell));
            for (int i = 0; i < facets.Count; i++)
            {
                int node = first[cell] + i;
                SheetPower power = powerOf(facets[i].Sheets);
                areas[node] = facets[i].SquareMetres;
                reflects[node] = power.ReflectedNear;
                mirrors[node] = facets[i].IsMirror ? power.ReflectedNear : 0;
                if (surfaces.PartnerOf(CellAt(cell), i) is var other and >= 0)
                {
                    (partner[node], passes[node]) = (Node(facets[i].Other, other), power.Passed);
                }
            }

            if (cell < cells)
            {
                whole[cell] = surfaces.FurnishingSquareMetres(cell) + areas[first[cell]..first[cell + 1]].Sum();
            }
        }
    }

    /// <summary>How many cells there are, without outdoors.</summary>
    internal int CellCount => surfaces.Count;
    /// <summary>How many facets and cells there are together.</summary>
    internal int Count => areas.Length;

    /// <summary>Adds a thing that stands in a cell.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="squareMetres">Its surface, without the share that passes.</param>
    /// <param name="reflectingSquareMetres">The share of it that reflects.</param>
    /// <param name="isMirror">Whether its first reflection is a path of its own.</param>
    internal void AddThing(int cell, double squareMetres, double reflectingSquareMetres, bool isMirror)
    {
        if (cell == Cells.Outdoors || squareMetres <= 0)
        {
            return;
        }

        int node = Things(cell);
        double before = areas[node], after = before + squareMetres;
        reflects[node] = ((before * reflects[node]) + reflectingSquareMetres) / after;
        mirrors[node] = ((before * mirrors[node]) + (isMirror ? reflectingSquareMetres : 0)) / after;
        areas[node] = after;
        whole[cell] += squareMetres;
    }

    /// <summary>The node of a facet.</summary>
    internal int Node(int cell, int facet) => first[cell == Cells.Outdoors ? surfaces.Count : cell] + facet;

    /// <summary>The node of the things in a cell.</summary>
    internal int Things(int cell) => first[^1] + cell;

    /// <summary>Area of a facet, or of a cell's things, square metres.</summary>
    internal double SquareMetres(int node) => areas[node];

    /// <summary>Share that each facet, and each cell's things, reflect of what strikes them.</summary>
    internal ReadOnlySpan<double> ReflectedShares => reflects;

    /// <summary>Share that passes each facet to its other face.</summary>
    internal ReadOnlySpan<double> PassedShares => passes;

    /// <summary>Area of each facet and of each cell's things, square metres.</summary>
    internal ReadOnlySpan<double> Areas => areas;

    /// <summary>All that a ray in a cell may strike, square metres.</summary>
    internal double SquareMetresOf(int cell) => whole[cell];

    /// <summary>The node of a cell's first facet; its last one comes just before the first of the next cell.</summary>
    internal int FirstOf(int cell) => first[cell];

    /// <summary>The patches of its facets.</summary>
    internal PatchLayout Layout => surfaces.Layout;

    /// <summary>Share of a cell's rays that strike its facets.</summary>
    internal double FreeShare(int cell) => cell == Cells.Outdoors ? 1 : 1 - ((areas[Things(cell)] + surfaces.FurnishingSquareMetres(cell)) / whole[cell]);

    /// <summary>Share of a cell's rays that strike its things.</summary>
    internal double ThingsShare(int cell) => cell == Cells.Outdoors ? 0 : areas[Things(cell)] / whole[cell];

    /// <summary>Adds what strikes the surfaces of a cell if power spreads evenly there.</summary>
    internal void StrikeEvenly(int cell, double power, double[] strikes)
    {
        if (cell == Cells.Outdoors || power == 0)
        {
            return;
        }

        for (int node = first[cell]; node < first[cell + 1]; node++)
        {
            strikes[node] += power * areas[node] / whole[cell];
        }

        strikes[Things(cell)] += power * areas[Things(cell)] / whole[cell];
    }

    /// <summary>The mean over a cell's surfaces of what they send out, W/m²: the reverse of <see cref="StrikeEvenly"/>.</summary>
    internal double MeanOf(int cell, double[] sent)
    {
        if (cell == Cells.Outdoors)
        {
            return 0;
        }

        double sum = sent[Things(cell)];
        for (int node = first[cell]; node < first[cell + 1]; node++)
        {
            sum += sent[node];
        }

        return sum / whole[cell];
    }

    /// <summary>What mirrors reflect of the power that strikes.</summary>
    internal double[] ReflectedByMirrors(double[] strikes)
    {
        var sent = new double[Count];
        for (int i = 0; i < sent.Length; i++)
        {
            sent[i] = mirrors[i] * strikes[i];
        }

        return sent;
    }

    /// <summary>What surfaces other than mirrors reflect of what strikes first, plus all that is reflected of what strikes after a mirror.</summary>
    internal double[] ReflectedOnwards(double[] first, double[] once)
    {
        var sent = new double[Count];
        for (int i = 0; i < sent.Length; i++)
        {
            sent[i] = ((reflects[i] - mirrors[i]) * first[i]) + (reflects[i] * once[i]);
        }

        return sent;
    }

    /// <summary>What leaves each facet of what strikes it and its other face.</summary>
    internal double[] Sent(double[] strikes, bool withReflection)
    {
        var sent = new double[Count];
        for (int i = 0; i < sent.Length; i++)
        {
            sent[i] = (withReflection ? reflects[i] * strikes[i] : 0) + (passes[i] * strikes[partner[i]]);
        }

        return sent;
    }

    /// <summary>What power that leaves the facets strikes next.</summary>
    internal double[] Struck(double[] sent)
    {
        var strikes = new double[Count];
        for (int cell = 0; cell < surfaces.Count; cell++)
        {
            Strike(cell, sent, strikes);
        }

        return strikes;
    }

    // From facets to patches, from patch to patch, and back to their facets by area.
    private void Strike(int cell, ReadOnlySpan<double> sent, Span<double> strikes)
    {
        PatchLayout layout = surfaces.Layout;
        FormFactors factors = layout.Factors[cell];
        double[] patchAreas = factors.Areas;
        int start = first[cell], things = Things(cell), patch = layout.FirstOf(cell);
        ReadOnlySpan<int> patchOf = layout.OfNode[start..first[cell + 1]];
        ReadOnlySpan<double> sends = sent.Slice(start, patchOf.Length);
        using Scratch scratch = Scratch.Open();
        Span<double> from = scratch.Of<double>(patchAreas.Length), to = scratch.Of<double>(factors.PaddedCount);
        from.Clear();
        double all = sent[things];
        for (int j = 0; j < patchOf.Length; j++)
        {
            from[patchOf[j] - patch] += sends[j];
            all += sends[j];
        }

        double free = FreeShare(cell);
        for (int p = 0; p < from.Length; p++)
        {
            from[p] *= free / patchAreas[p];
        }

        factors.Strike(from, to);
        strikes[things] += all * areas[things] / whole[cell];
        double byThings = sent[things] / whole[cell];
        for (int p = 0; p < patchAreas.Length; p++)
        {
            to[p] = (to[p] / patchAreas[p]) + byThings;
        }

        Span<double> struck = strikes.Slice(start, patchOf.Length);
        ReadOnlySpan<double> square = areas.AsSpan(start, patchOf.Length);
        for (int i = 0; i < struck.Length; i++)
        {
            struck[i] += square[i] * to[patchOf[i] - patch];
        }
    }

    private int CellAt(int place) => place == surfaces.Count ? Cells.Outdoors : place;
}

/// <summary>What layers behind each other pass, and what they reflect of what strikes them on either side.</summary>
internal readonly record struct SheetPower(double Passed, double ReflectedNear, double ReflectedFar);
