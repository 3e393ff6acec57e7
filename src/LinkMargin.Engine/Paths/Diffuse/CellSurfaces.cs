using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// The surfaces of every cell, and the areas and volumes for its power balance: all of the geometry, and no losses. What a place sees of
/// them is in <see cref="CellViews"/>.
/// </summary>
internal sealed class CellSurfaces
{
    // A line that is inside a shell for no more than this share of its length only touches it.
    private const double ThroughShare = 1e-6;

    private static readonly double[] Uncut = [0, 1];

    private readonly List<Facet>[] facets;
    private readonly List<int>[] partners; // of each facet, the number of its other face in the cell behind; -1 for none
    private readonly List<int>[] behindHoles;
    private readonly List<(FixtureBox Box, int Cell)>[] shells; // in each cell, each with the cell inside it; none outdoors
    private readonly HashSet<int> standOutdoors = []; // the cells inside the shells that stand there
    private readonly CellGrid?[] grids;
    private readonly SurfacePatches?[] patches;
    private readonly FormFactors?[] formFactors;
    private PatchLayout? layout;
    private readonly List<Panel> panels = [];
    private readonly List<Solid> solids = [];
    private readonly double[] furnishing; // square metres of perfect absorber, by cell
    private readonly double[] volumes; // cubic metres, by cell

    /// <summary>Starts with no surface.</summary>
    /// <param name="cells">How many cells there are.</param>
    /// <param name="gridOf">The blocks that cut a cell's surface; null for none.</param>
    internal CellSurfaces(int cells, Func<int, CellGrid>? gridOf = null)
    {
        grids = [.. Enumerable.Range(0, cells).Select(cell => gridOf?.Invoke(cell)), null];
        patches = new SurfacePatches?[cells + 1];
        facets = [.. Enumerable.Range(0, cells + 1).Select(_ => new List<Facet>())]; // outdoors last
        partners = [.. Enumerable.Range(0, cells + 1).Select(_ => new List<int>())];
        shells = [.. Enumerable.Range(0, cells + 1).Select(_ => new List<(FixtureBox, int)>())];
        formFactors = new FormFactors?[cells];
        behindHoles = [.. Enumerable.Range(0, cells + 1).Select(_ => new List<int>())];
        furnishing = new double[cells];
        volumes = new double[cells];
        Views = new CellViews(this);
    }

    /// <summary>How many cells there are.</summary>
    internal int Count => volumes.Length;

    /// <summary>What places see of them, once all are there.</summary>
    internal CellViews Views { get; }

    /// <summary>What stands between cells.</summary>
    internal IReadOnlyList<Panel> Panels => panels;

    /// <summary>Solid things in cells.</summary>
    internal IReadOnlyList<Solid> Solids => solids;

    /// <summary>Whether any surface, or any thing, is made of a material.</summary>
    internal bool IsMadeOf(int material) =>
        panels.Exists(panel => Array.Exists(panel.Sheets, sheet => sheet.Material == material)) || solids.Exists(solid => solid.Material == material);

    /// <summary>The facets of one cell, or of the house as seen from outdoors.</summary>
    internal List<Facet> Of(int cell) => facets[Index(cell)];

    /// <summary>The number of a facet's other face among those of the cell behind it; −1 where there is none.</summary>
    internal int PartnerOf(int cell, int facet) => partners[Index(cell)][facet];

    /// <summary>The patches that the facets of a cell make. Computed on first use, when all are there.</summary>
    internal SurfacePatches PatchesOf(int cell) => LazyInitializer.EnsureInitialized(
        ref patches[Index(cell)], () => SurfacePatches.Of(facets[Index(cell)], grids[Index(cell)], facet => shells[Index(cell)].FindIndex(shell => shell.Cell == facet.Other)));

    /// <summary>Where power that leaves the patches of a cell strikes next. Computed on first use.</summary>
    internal FormFactors FormFactorsOf(int cell) => LazyInitializer.EnsureInitialized(ref formFactors[cell], () => FormFactors.Of(PatchesOf(cell).Patches, (place, middle) => IsHidden(cell, place, middle)));

    /// <summary>Takes the form factors of cells that look the same in another house, whatever they are made of.</summary>
    /// <param name="akin">The surfaces of the other house.</param>
    internal void Reuse(CellSurfaces akin)
    {
        for (int cell = 0; cell < Math.Min(Count, akin.Count); cell++)
        {
            if (LooksLike(akin, cell))
            {
                formFactors[cell] ??= akin.FormFactorsOf(cell);
            }
        }
    }

    private bool LooksLike(CellSurfaces akin, int cell)
    {
        IReadOnlyList<Facet> here = PatchesOf(cell).Patches, there = akin.PatchesOf(cell).Patches;
        if (here.Count != there.Count || shells[cell].Count != akin.shells[cell].Count)
        {
            return false;
        }

        for (int i = 0; i < here.Count; i++)
        {
            if (here[i].Normal != there[i].Normal || !here[i].Outline.AsSpan().SequenceEqual(there[i].Outline))
            {
                return false;
            }
        }

        for (int i = 0; i < shells[cell].Count; i++)
        {
            if (!shells[cell][i].Box.TakesUpTheSameSpaceAs(akin.shells[cell][i].Box))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The patches of all cells. Computed on first use, when all are there.</summary>
    internal PatchLayout Layout => LazyInitializer.EnsureInitialized(ref layout, () => new PatchLayout(this));

    /// <summary>Absorbing area of furnishing that no house file lists, square metres.</summary>
    internal double FurnishingSquareMetres(int cell) => furnishing[cell];

    /// <summary>Volume, cubic metres.</summary>
    internal double CubicMetres(int cell) => volumes[cell];

    /// <summary>The cells that one cell has holes to.</summary>
    internal List<int> BehindHoles(int cell) => behindHoles[Index(cell)];

    /// <summary>The shells that stand in a cell, each with the cell inside it; none outdoors.</summary>
    internal IReadOnlyList<(FixtureBox Box, int Cell)> ShellsIn(int cell) => shells[Index(cell)];

    /// <summary>Whether a cell is inside a shell that stands outdoors.</summary>
    internal bool StandsOutdoors(int cell) => standOutdoors.Contains(cell);

    /// <summary>Adds air to a cell.</summary>
    internal void Fill(int cell, double cubicMetres) => volumes[cell] += cubicMetres;

    /// <summary>Adds a shell that stands in a cell and hides what lies behind it.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="shell">The shell.</param>
    /// <param name="inside">The cell inside the shell.</param>
    internal void Stand(int cell, FixtureBox shell, int inside)
    {
        if (cell != Cells.Outdoors)
        {
            shells[cell].Add((shell, inside));
        }
        else
        {
            standOutdoors.Add(inside);
        }
    }

    /// <summary>Adds furnishing to a cell.</summary>
    internal void Furnish(int cell, double squareMetres) => furnishing[cell] += squareMetres;

    /// <summary>Adds a solid thing.</summary>
    internal void Add(Solid solid)
    {
        if (solid.Cell != Cells.Outdoors)
        {
            solids.Add(solid);
        }
    }

    /// <summary>Adds a panel between two cells, to the list of panels and to what both cells see.</summary>
    /// <param name="one">The cell on one side.</param>
    /// <param name="other">The cell on the other.</param>
    /// <param name="outline">Its corners in order.</param>
    /// <param name="sheets">What stands in it, from one side to the other.</param>
    /// <param name="towardsOther">The direction from the one side to the other, of unit length.</param>
    internal void AddPanel(int one, int other, Point3[] outline, Sheet[] sheets, Point3 towardsOther) => AddPanel(
        new Facet(other, sheets, outline) { Normal = -towardsOther },
        new Facet(one, [.. sheets.Reverse()], outline) { Normal = towardsOther });

    /// <summary>Adds a panel by its two faces.</summary>
    internal void AddPanel(Facet ofOne, Facet ofOther)
    {
        (int one, int other) = (ofOther.Other, ofOne.Other);
        panels.Add(new Panel(one, other, ofOne.SquareMetres, ofOne.Sheets));
        if (one == other)
        {
            return; // it stands inside one cell
        }

        double[] along = Cuts(one, other, ofOne.Outline, 1, 3), up = Cuts(one, other, ofOne.Outline, 3, 1);
        for (int i = 0; i + 1 < along.Length; i++)
        {
            for (int j = 0; j + 1 < up.Length; j++)
            {
                partners[Index(one)].Add(facets[Index(other)].Count);
                partners[Index(other)].Add(facets[Index(one)].Count);
                See(one, ofOne with { Outline = Piece(ofOne.Outline, along[i], along[i + 1], up[j], up[j + 1]) });
                See(other, ofOther with { Outline = Piece(ofOther.Outline, along[i], along[i + 1], up[j], up[j + 1]) });
            }
        }
    }

    // Where the blocks of the cells on both sides cut one side of a rectangle, as shares of it.
    private double[] Cuts(int one, int other, Point3[] outline, int side, int across)
    {
        Point3 start = outline[0], along = outline[side] - start, up = outline[across] - start;
        double least = GeometryTolerances.SlackMetres / start.DistanceTo(outline[side]);
        List<double> cuts = [];
        grids[Index(one)]?.AddCuts(start, along, up, cuts);
        grids[Index(other)]?.AddCuts(start, along, up, cuts);
        cuts.RemoveAll(cut => !(cut > least && cut < 1 - least));
        if (cuts.Count == 0)
        {
            return Uncut; // as most
        }

        cuts.Sort();
        return [0, .. cuts.Where((cut, i) => i == 0 || cut - cuts[i - 1] > least), 1];
    }

    private static Point3[] Piece(Point3[] outline, double left, double right, double low, double high)
    {
        return [At(left, low), At(right, low), At(right, high), At(left, high)];

        Point3 At(double along, double up) => outline[0].Towards(outline[1], along).Towards(outline[3].Towards(outline[2], along), up);
    }

    // Adds a facet to what one cell sees.
    private void See(int cell, Facet facet)
    {
        int index = Index(cell);
        if (!facet.IsHole)
        {
            facets[index].Add(facet);
            return;
        }

        List<int> behind = behindHoles[index];
        int hole = behind.IndexOf(facet.Other);
        if (hole < 0)
        {
            hole = behind.Count;
            behind.Add(facet.Other);
        }

        facets[index].Add(facet with { Hole = hole });
    }

    // Whether the middle of a patch is hidden behind a shell.
    private bool IsHidden(int cell, Point3 place, Point3 middle)
    {
        foreach ((FixtureBox shell, _) in shells[Index(cell)])
        {
            if (shell.Pierce(place, middle, out BoxPassage passage)
                && passage.Leave - passage.Enter > ThroughShare && passage.Enter < 1 - ThroughShare && passage.Leave > ThroughShare)
            {
                return true;
            }
        }

        return false;
    }

    private int Index(int cell) => cell == Cells.Outdoors ? Count : cell;
}

/// <summary>What stands between two cells, or inside one, for the power balance.</summary>
/// <param name="One">The cell on one side.</param>
/// <param name="Other">The cell on the other.</param>
/// <param name="SquareMetres">Its area.</param>
/// <param name="Sheets">What stands in it, from one side to the other; nothing in a hole.</param>
internal sealed record Panel(int One, int Other, double SquareMetres, Sheet[] Sheets);

/// <summary>A solid thing that stands in a cell: nothing passes through it into another cell.</summary>
/// <param name="Cell">The cell.</param>
/// <param name="SquareMetres">Its surface.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Depths">Mean length of a ray through it, as a multiple of the depth that its material's loss belongs to.</param>
/// <param name="IsMirror">Whether its first reflection is a path of its own.</param>
internal sealed record Solid(int Cell, double SquareMetres, int Material, double Depths, bool IsMirror);
