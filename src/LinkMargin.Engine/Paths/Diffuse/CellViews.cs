using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>What places see of the surfaces of their cells.</summary>
internal sealed class CellViews(CellSurfaces surfaces)
{
    private const double LeastSphere = 0.5;

    // Half a wavelength: outdoors, where nothing else may send power to a place, a face is seen from a little behind its plane.
    private const double RimMetres = 0.06;

    private readonly FacetAngles?[] angles = new FacetAngles?[surfaces.Count + 1]; // outdoors last

    /// <summary>How many numbers the view factors from a cell need.</summary>
    internal int Numbers(int cell) => surfaces.Of(cell).Count + surfaces.BehindHoles(cell).Count + OutdoorNumbers(cell);

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
        List<Facet> all = surfaces.Of(cell);
        List<int> behind = surfaces.BehindHoles(cell);
        Span<double> shares = room[..all.Count], holes = room.Slice(all.Count, behind.Count), outdoors = room.Slice(all.Count + holes.Length, OutdoorNumbers(cell));
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
            others[h] = cell == Cells.Outdoors && surfaces.StandsOutdoors(behind[h]) ? holes[h] / Math.Max(angle - seen, 1) : 0;
            inStead += others[h];
        }

        for (int i = 0; i < shares.Length; i++)
        {
            int own = inStead > 0 ? behind.IndexOf(all[i].Other) : -1;
            shares[i] *= whole + inStead - (own >= 0 ? others[own] : 0);
        }

        if (outdoors.Length > 0)
        {
            SeeOutdoors(place, cell, holes[behind.IndexOf(Cells.Outdoors)], outdoors);
        }

        return new ViewFactors(cell, shares, cell == Cells.Outdoors ? 0 : near, holes, outdoors);
    }

    /// <summary>What a place sees, from the numbers that <see cref="From"/> wrote before.</summary>
    internal ViewFactors Again(int cell, double here, ReadOnlySpan<double> room)
    {
        int facets = surfaces.Of(cell).Count, holes = surfaces.BehindHoles(cell).Count;
        return new ViewFactors(cell, room[..facets], here, room.Slice(facets, holes), room.Slice(facets + holes, OutdoorNumbers(cell)));
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
        List<Facet> all = surfaces.Of(Cells.Outdoors);
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

    private int OutdoorNumbers(int cell) => surfaces.StandsOutdoors(cell) && surfaces.BehindHoles(cell).Contains(Cells.Outdoors) ? surfaces.Of(Cells.Outdoors).Count : 0;

    private FacetAngles AnglesOf(int cell) => LazyInitializer.EnsureInitialized(
        ref angles[cell == Cells.Outdoors ? surfaces.Count : cell], () => new FacetAngles(surfaces.Of(cell), cell == Cells.Outdoors ? RimMetres : 0));

    // Reduces what a place sees of each patch to the part that no shell hides. A shell does not hide its own sides.
    private void Hide(int cell, Point3 place, Span<double> angles)
    {
        List<Facet> all = surfaces.Of(cell);
        SurfacePatches ofCell = surfaces.PatchesOf(cell);
        Span<Point3> planes = stackalloc Point3[ShellShadow.MostPlanes];
        foreach ((FixtureBox box, int inside) in surfaces.ShellsIn(cell))
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
}

/// <summary>
/// Where the rays that leave a place go first, as shares of all directions; and, since every ray can be reversed, where those
/// that reach it come from.
/// </summary>
internal readonly ref struct ViewFactors
{
    internal ViewFactors(int cell, ReadOnlySpan<double> shares, double here, ReadOnlySpan<double> beyond, ReadOnlySpan<double> outdoors)
    {
        Cell = cell;
        Shares = shares;
        Here = here;
        Beyond = beyond;
        Outdoors = outdoors;
    }

    /// <summary>The cell the place is in.</summary>
    internal int Cell { get; }

    /// <summary>For each facet of the cell, the rays that strike it.</summary>
    internal ReadOnlySpan<double> Shares { get; }

    /// <summary>Rays that spread evenly over the cell, from the plane of a hole.</summary>
    internal double Here { get; }

    /// <summary>For each hole, the rays that spread evenly over the cell behind it.</summary>
    internal ReadOnlySpan<double> Beyond { get; }

    /// <summary>For each of the house's outer faces, the rays that strike it through a hole to outdoors; empty where the cell has none.</summary>
    internal ReadOnlySpan<double> Outdoors { get; }
}
