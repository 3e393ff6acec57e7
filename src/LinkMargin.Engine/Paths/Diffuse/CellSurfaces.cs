using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// The surfaces of every cell, what a place in it sees of them, and the areas and volumes that its power balance is made of:
/// all of the geometry, and no loss.
/// </summary>
internal sealed class CellSurfaces
{
    private const double LeastSphere = 0.5;

    private readonly List<Facet>[] facets;
    private readonly List<int>[] behindHoles;
    private readonly List<Panel> panels = [];
    private readonly List<Solid> solids = [];
    private readonly double[] furnishing; // square metres of perfect absorber, by cell
    private readonly double[] volumes; // cubic metres, by cell

    internal CellSurfaces(int cells)
    {
        facets = [.. Enumerable.Range(0, cells + 1).Select(_ => new List<Facet>())]; // out of doors last
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

    /// <summary>The facets of one cell, or of the house as seen from out of doors.</summary>
    internal IReadOnlyList<Facet> Of(int cell) => facets[Index(cell)];

    /// <summary>Absorbing area of what no house file lists, square metres.</summary>
    internal double FurnishingSquareMetres(int cell) => furnishing[cell];

    /// <summary>Volume, cubic metres.</summary>
    internal double CubicMetres(int cell) => volumes[cell];

    /// <summary>How many cells one cell has holes to.</summary>
    internal int HoleCount(int cell) => behindHoles[Index(cell)].Count;

    /// <summary>One of those cells.</summary>
    internal int BehindHole(int cell, int hole) => behindHoles[Index(cell)][hole];

    /// <summary>Adds air to a cell.</summary>
    internal void Fill(int cell, double cubicMetres) => volumes[cell] += cubicMetres;

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

    /// <summary>Adds a panel between two cells, to the books and to what both see.</summary>
    /// <param name="one">The cell on one side.</param>
    /// <param name="other">The cell on the other.</param>
    /// <param name="outline">Its corners in order.</param>
    /// <param name="sheets">What stands in it, from one side to the other.</param>
    /// <param name="towardsOther">The direction from the one side to the other, if each sees only its own face; null where both see both.</param>
    internal void AddPanel(int one, int other, Point3[] outline, Sheet[] sheets, Point3? towardsOther = null)
    {
        Sheet[] back = [.. sheets.Reverse()];
        var seen = new Facet(other, sheets, outline) { Facing = towardsOther is { } n ? new Point3(-n.X, -n.Y, -n.Z) : null };
        Add(new Panel(one, other, seen.SquareMetres, sheets));
        See(one, seen);
        See(other, new Facet(one, back, outline) { Facing = towardsOther });
    }

    /// <summary>Adds a panel to the books alone.</summary>
    internal void Add(Panel panel) => panels.Add(panel);

    /// <summary>Adds a facet to what one cell sees.</summary>
    internal void See(int cell, Facet facet)
    {
        if (cell == facet.Other)
        {
            return;
        }

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
    /// cells' facets would tell two stories, half of what it sees is the one cell and half the other, whatever their facets;
    /// towards the hole the one passes into the other, so nobody who steps through meets a seam.
    /// </summary>
    /// <param name="place">The place.</param>
    /// <param name="cell">The cell it is in.</param>
    /// <param name="room">Where to write: as many numbers as the cell has facets and holes.</param>
    internal ViewFactors From(Point3 place, int cell, Span<double> room)
    {
        List<Facet> all = facets[Index(cell)];
        Span<double> shares = room[..all.Count], holes = room.Slice(all.Count, HoleCount(cell));
        holes.Clear();
        double angle = 0;
        for (int i = 0; i < all.Count; i++)
        {
            shares[i] = all[i].SolidAngle(place) / (4 * Math.PI);
            angle += shares[i];
            if (all[i].IsHole)
            {
                holes[all[i].Hole] += shares[i];
            }
        }

        double apart = 1, weights = 0;
        foreach (ref double hole in holes)
        {
            hole = Math.Min(1, 4 * hole * hole); // 1 in the hole's own plane
            apart *= 1 - hole;
            weights += hole;
        }

        // Facets that stand for several, or a room with recesses, may not fill the sphere exactly.
        // Out of doors the rest is sky.
        double whole = apart / Math.Max(angle, cell == Cells.Outdoors ? 1 : LeastSphere);
        foreach (ref double share in shares)
        {
            share *= whole;
        }

        double near = weights > 0 ? (1 - apart) / 2 : 0;
        foreach (ref double hole in holes)
        {
            hole *= weights > 0 ? near / weights : 0;
        }

        return new ViewFactors(cell, shares, near, holes);
    }

    private int Index(int cell) => cell == Cells.Outdoors ? Count : cell;
}

/// <summary>What stands between two cells, or on both sides in one, for the books of the power balance.</summary>
/// <param name="One">The cell on one side.</param>
/// <param name="Other">The cell on the other.</param>
/// <param name="SquareMetres">Its area.</param>
/// <param name="Sheets">What stands in it, from one side to the other; nothing in a hole.</param>
internal sealed record Panel(int One, int Other, double SquareMetres, Sheet[] Sheets);

/// <summary>A solid thing that stands in a cell: it takes what strikes it and nothing comes out on the other side into another cell.</summary>
/// <param name="Cell">The cell.</param>
/// <param name="SquareMetres">Its surface.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Depths">How many times the depth that its material's loss belongs to a flight through it runs, on average.</param>
/// <param name="IsMirror">Whether what it reflects first is a path of its own.</param>
internal sealed record Solid(int Cell, double SquareMetres, int Material, double Depths, bool IsMirror);
