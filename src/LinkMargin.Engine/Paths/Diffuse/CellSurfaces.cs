using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// The surfaces of every cell, what a place in it sees of them, and the areas and volumes for its power balance: all of the
/// geometry, and no losses.
/// </summary>
internal sealed class CellSurfaces
{
    private const double LeastSphere = 0.5;

    // Half a wavelength: outdoors, where nothing else may send power to a place, a face is seen from a little behind its plane.
    private const double RimMetres = 0.06;

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
    private readonly FacetAngles?[] angles;
    private readonly FormFactors?[] formFactors;
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
        angles = new FacetAngles?[cells + 1];
        facets = [.. Enumerable.Range(0, cells + 1).Select(_ => new List<Facet>())]; // outdoors last
        partners = [.. Enumerable.Range(0, cells + 1).Select(_ => new List<int>())];
        shells = [.. Enumerable.Range(0, cells + 1).Select(_ => new List<(FixtureBox, int)>())];
        formFactors = new FormFactors?[cells];
        behindHoles = [.. Enumerable.Range(0, cells + 1).Select(_ => new List<int>())];
        furnishing = new double[cells];
        volumes = new double[cells];
    }

    /// <summary>How many cells there are.</summary>
    internal int Count => volumes.Length;

    /// <summary>What stands between cells.</summary>
    internal IReadOnlyList<Panel> Panels => panels;

    /// <summary>Solid things in cells.</summary>
    internal IReadOnlyList<Solid> Solids => solids;

    /// <summary>Whether any surface, or any thing, is made of a material.</summary>
    internal bool IsMadeOf(int material) =>
        panels.Exists(panel => Array.Exists(panel.Sheets, sheet => sheet.Material == material)) || solids.Exists(solid => solid.Material == material);

    /// <summary>The facets of one cell, or of the house as seen from outdoors.</summary>
    internal IReadOnlyList<Facet> Of(int cell) => facets[Index(cell)];

    /// <summary>The number of a facet's other face among those of the cell behind it; −1 where there is none.</summary>
    internal int PartnerOf(int cell, int facet) => partners[Index(cell)][facet];

    /// <summary>The patches that the facets of a cell make. Computed on first use, when all are there.</summary>
    internal SurfacePatches PatchesOf(int cell) => LazyInitializer.EnsureInitialized(
        ref patches[Index(cell)], () => SurfacePatches.Of(facets[Index(cell)], grids[Index(cell)], facet => shells[Index(cell)].FindIndex(shell => shell.Cell == facet.Other)));

    /// <summary>Where power that leaves the patches of a cell strikes next. Computed on first use.</summary>
    internal FormFactors FormFactorsOf(int cell) => LazyInitializer.EnsureInitialized(ref formFactors[cell], () => FormFactors.Of(PatchesOf(cell).Patches, (place, middle) => IsHidden(cell, place, middle)));

    /// <summary>Absorbing area of furnishing that no house file lists, square metres.</summary>
    internal double FurnishingSquareMetres(int cell) => furnishing[cell];

    /// <summary>Volume, cubic metres.</summary>
    internal double CubicMetres(int cell) => volumes[cell];

    /// <summary>How many cells one cell has holes to.</summary>
    internal int HoleCount(int cell) => behindHoles[Index(cell)].Count;

    /// <summary>How many numbers the view factors from a cell need.</summary>
    internal int Numbers(int cell) => Of(cell).Count + HoleCount(cell) + OutdoorNumbers(cell);

    /// <summary>One of those cells.</summary>
    internal int BehindHole(int cell, int hole) => behindHoles[Index(cell)][hole];

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

    /// <summary>
    /// What a place sees: the share of the sphere that each facet of its cell fills. In the plane of a hole, where the two
    /// cells' facets would give different results, half of what it sees is the mean of one cell and half that of the other; outdoors
    /// has no mean, and at a shell that stands there what the place would see from outside counts in its stead. Towards the hole the one view changes
    /// gradually into the other, so there is no seam.
    /// </summary>
    /// <param name="place">The place.</param>
    /// <param name="cell">The cell it is in.</param>
    /// <param name="room">Where to write: as many numbers as <see cref="Numbers"/> says.</param>
    internal ViewFactors From(Point3 place, int cell, Span<double> room)
    {
        List<Facet> all = facets[Index(cell)];
        Span<double> shares = room[..all.Count], holes = room.Slice(all.Count, HoleCount(cell)), outdoors = room.Slice(all.Count + holes.Length, OutdoorNumbers(cell));
        holes.Clear();
        See(place, cell, shares);
        double angle = 0;
        for (int i = 0; i < all.Count; i++)
        {
            angle += shares[i];
            if (all[i].IsHole)
            {
                holes[all[i].Hole] += shares[i];
            }
        }

        double apart = 1, weights = 0;
        foreach (double hole in holes)
        {
            apart *= 1 - Nearness(hole);
            weights += Nearness(hole);
        }

        // Facets that stand for several, or a room with recesses, may not fill the sphere exactly.
        // Outdoors the rest is sky.
        double whole = apart / Math.Max(angle, cell == Cells.Outdoors ? 1 : LeastSphere), near = (1 - apart) / 2, inStead = 0;
        using Scratch scratch = Scratch.Open();
        Span<double> others = scratch.Of<double>(holes.Length); // of what counts in a mean's stead, what belongs to each hole
        for (int h = 0; h < holes.Length; h++)
        {
            double seen = holes[h];
            holes[h] = weights > 0 ? near * Nearness(seen) / weights : 0;
            others[h] = cell == Cells.Outdoors && standOutdoors.Contains(behindHoles[Count][h]) ? holes[h] / Math.Max(angle - seen, 1) : 0;
            inStead += others[h];
        }

        for (int i = 0; i < shares.Length; i++)
        {
            int own = inStead > 0 ? behindHoles[Count].IndexOf(all[i].Other) : -1;
            shares[i] *= whole + inStead - (own >= 0 ? others[own] : 0);
        }

        if (outdoors.Length > 0)
        {
            SeeOutdoors(place, cell, holes[behindHoles[cell].IndexOf(Cells.Outdoors)], outdoors);
        }

        return new ViewFactors(cell, shares, cell == Cells.Outdoors ? 0 : near, holes, outdoors);
    }

    // 1 in a hole's own plane, where it fills half the sphere.
    private static double Nearness(double shareOfSphere) => Math.Min(1, 4 * shareOfSphere * shareOfSphere);

    // Shares of the sphere that the facets of a cell fill.
    private void See(Point3 place, int cell, Span<double> shares)
    {
        using Scratch scratch = Scratch.Open();
        Span<double> angles = scratch.Of<double>(FacetAngles.Room(shares.Length));
        AnglesOf(cell).From(place, angles);
        Hide(cell, place, angles);
        for (int i = 0; i < shares.Length; i++)
        {
            shares[i] = angles[i] / (4 * Math.PI);
        }
    }

    // What a place in a shell would see outdoors, but for the shell's own sides, times a weight.
    private void SeeOutdoors(Point3 place, int cell, double weight, Span<double> shares)
    {
        See(place, Cells.Outdoors, shares);
        List<Facet> all = facets[Index(Cells.Outdoors)];
        double angle = 0;
        for (int i = 0; i < shares.Length; i++)
        {
            shares[i] = all[i].Other == cell ? 0 : shares[i];
            angle += shares[i];
        }

        foreach (ref double share in shares)
        {
            share *= weight / Math.Max(angle, 1);
        }
    }

    private int OutdoorNumbers(int cell) => standOutdoors.Contains(cell) && behindHoles[cell].Contains(Cells.Outdoors) ? Of(Cells.Outdoors).Count : 0;

    private FacetAngles AnglesOf(int cell) => LazyInitializer.EnsureInitialized(ref angles[Index(cell)], () => new FacetAngles(facets[Index(cell)], cell == Cells.Outdoors ? RimMetres : 0));

    // Reduces what a place sees of each patch to the part that no shell hides. A shell does not hide its own sides.
    private void Hide(int cell, Point3 place, Span<double> angles)
    {
        List<Facet> all = facets[Index(cell)];
        SurfacePatches ofCell = PatchesOf(cell);
        Span<Point3> planes = stackalloc Point3[ShellShadow.MostPlanes];
        foreach ((FixtureBox box, int inside) in shells[Index(cell)])
        {
            var shadow = new ShellShadow(box, place, planes);
            for (int i = 0; i < all.Count; i++)
            {
                if (angles[i] > 0 && all[i].Other != inside)
                {
                    angles[i] *= 1 - shadow.Hidden(ofCell.MiddleOf(i), ofCell.HalfMetresOf(i));
                }
            }
        }
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
