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
    private double[]? scattered;
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

    /// <summary>The same with another loss of one material, before any thing is added.</summary>
    internal SurfaceExchange(SurfaceExchange near, int material, Func<Sheet[], SheetPower> powerOf)
    {
        (surfaces, first, partner) = (near.surfaces, near.first, near.partner);
        (areas, reflects, mirrors, passes) = ([.. near.areas], [.. near.reflects], [.. near.mirrors], [.. near.passes]);
        whole = [.. near.whole];
        for (int cell = 0; cell <= surfaces.Count; cell++)
        {
            List<Facet> facets = surfaces.Of(CellAt(cell));
            for (int i = 0; i < facets.Count; i++)
            {
                if (Array.Exists(facets[i].Sheets, sheet => sheet.Material == material))
                {
                    int node = first[cell] + i;
                    SheetPower power = powerOf(facets[i].Sheets);
                    reflects[node] = power.ReflectedNear;
                    mirrors[node] = facets[i].IsMirror ? power.ReflectedNear : 0;
                    passes[node] = surfaces.PartnerOf(CellAt(cell), i) >= 0 ? power.Passed : 0;
                }
            }
        }

        for (int cell = 0; cell < surfaces.Count; cell++)
        {
            int things = Things(cell);
            whole[cell] = surfaces.FurnishingSquareMetres(cell) + areas.AsSpan(first[cell]..first[cell + 1]).ToArray().Sum();
            (areas[things], reflects[things], mirrors[things]) = (0, 0, 0);
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

    /// <summary>The part of it that mirrors reflect.</summary>
    internal ReadOnlySpan<double> MirroredShares => mirrors;

    /// <summary>The part of it that others reflect.</summary>
    internal ReadOnlySpan<double> ScatteredShares => LazyInitializer.EnsureInitialized(ref scattered, Scattered);

    /// <summary>The node of each facet's other face; its own where there is none, which passes nothing.</summary>
    internal ReadOnlySpan<int> OtherFaces => partner;

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
    internal void StrikeEvenly(int cell, double power, Span<double> strikes)
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
    internal double MeanOf(int cell, double[] densities)
    {
        if (cell == Cells.Outdoors)
        {
            return 0;
        }

        double sum = densities[Things(cell)] * areas[Things(cell)];
        for (int node = first[cell]; node < first[cell + 1]; node++)
        {
            sum += densities[node] * areas[node];
        }

        return sum / whole[cell];
    }

    private double[] Scattered()
    {
        var shares = new double[Count];
        for (int i = 0; i < shares.Length; i++)
        {
            shares[i] = reflects[i] - mirrors[i];
        }

        return shares;
    }

    private int CellAt(int place) => place == surfaces.Count ? Cells.Outdoors : place;
}

/// <summary>What layers behind each other pass, and what they reflect of what strikes them on either side.</summary>
internal readonly record struct SheetPower(double Passed, double ReflectedNear, double ReflectedFar);
