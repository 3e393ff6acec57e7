namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// The patches of all cells in one row, those of each cell followed by the things in it, and which patches have faces of the same panels:
/// geometry alone, so that it serves all losses.
/// </summary>
internal sealed class PatchLayout
{
    private readonly int[] first; // of each cell's patches; one longer
    private readonly int[] ofNode;
    private readonly int[] pairOf;
    private readonly int[] firstPair; // of each patch; one longer
    private readonly int[] behind;

    /// <summary>Numbers the patches.</summary>
    /// <param name="surfaces">The surfaces, once all are there.</param>
    internal PatchLayout(CellSurfaces surfaces)
    {
        int cells = surfaces.Count;
        int[] firstNode = new int[cells + 1];
        first = new int[cells + 1];
        Factors = new FormFactors[cells];
        for (int cell = 0; cell < cells; cell++)
        {
            Factors[cell] = surfaces.FormFactorsOf(cell);
            firstNode[cell + 1] = firstNode[cell] + surfaces.Of(cell).Count;
            first[cell + 1] = first[cell] + Factors[cell].Areas.Length + 1;
        }

        ofNode = new int[firstNode[cells]];
        for (int cell = 0; cell < cells; cell++)
        {
            SurfacePatches patches = surfaces.PatchesOf(cell);
            for (int node = firstNode[cell]; node < firstNode[cell + 1]; node++)
            {
                ofNode[node] = first[cell] + patches.Of(node - firstNode[cell]);
            }
        }

        var pairs = new List<(int Behind, int Node)>[first[cells]];
        for (int cell = 0; cell < cells; cell++)
        {
            List<Facet> facets = surfaces.Of(cell);
            for (int facet = 0; facet < facets.Count; facet++)
            {
                if (facets[facet].Other != Cells.Outdoors && surfaces.PartnerOf(cell, facet) is var other and >= 0)
                {
                    int node = firstNode[cell] + facet;
                    (pairs[ofNode[node]] ??= []).Add((ofNode[firstNode[facets[facet].Other] + other], node));
                }
            }
        }

        (pairOf, firstPair, behind) = Number(pairs, ofNode.Length);
    }

    /// <summary>How many patches and things there are together.</summary>
    internal int Count => first[^1];

    /// <summary>How many pairs of patches have faces of the same panels; each counts once in either direction.</summary>
    internal int Pairs => behind.Length;

    /// <summary>The form factors of each cell's patches.</summary>
    internal FormFactors[] Factors { get; }

    /// <summary>A cell's first patch.</summary>
    internal int FirstOf(int cell) => first[cell];

    /// <summary>The things in a cell: they come after its last patch.</summary>
    internal int Things(int cell) => first[cell + 1] - 1;

    /// <summary>The patch of each facet, by the facet's node. Outdoors has none.</summary>
    internal ReadOnlySpan<int> OfNode => ofNode;

    /// <summary>The pair of each facet's patch and the patch of its other face, by the facet's node; −1 where nothing comes back from behind.</summary>
    internal ReadOnlySpan<int> PairOf => pairOf;

    /// <summary>The first pair of each patch; one longer.</summary>
    internal ReadOnlySpan<int> FirstPair => firstPair;

    /// <summary>The other patch of each pair.</summary>
    internal ReadOnlySpan<int> Behind => behind;

    private static (int[] PairOf, int[] FirstPair, int[] Behind) Number(List<(int Behind, int Node)>?[] pairs, int nodes)
    {
        int[] pairOf = new int[nodes], firstPair = new int[pairs.Length + 1];
        Array.Fill(pairOf, -1);
        List<int> behind = [];
        for (int patch = 0; patch < pairs.Length; patch++)
        {
            foreach ((int other, int node) in pairs[patch] ?? [])
            {
                int at = behind.IndexOf(other, firstPair[patch]);
                if (at < 0)
                {
                    at = behind.Count;
                    behind.Add(other);
                }

                pairOf[node] = at;
            }

            firstPair[patch + 1] = behind.Count;
        }

        return (pairOf, firstPair, [.. behind]);
    }
}
