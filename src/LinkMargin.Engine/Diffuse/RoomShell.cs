using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Diffuse;

/// <summary>The facets of every cell, and the power balance they make: built together, so that both tell the same story.</summary>
internal sealed class RoomShell
{
    private readonly List<Facet>[] facets;
    private readonly List<int>[] behindHoles;

    internal RoomShell(int cells)
    {
        Balance = new PowerBalance(cells);
        facets = [.. Enumerable.Range(0, cells).Select(_ => new List<Facet>())];
        behindHoles = [.. Enumerable.Range(0, cells).Select(_ => new List<int>())];
    }

    /// <summary>The power balance.</summary>
    internal PowerBalance Balance { get; }

    /// <summary>The facets of one cell.</summary>
    internal IReadOnlyList<Facet> Of(int cell) => facets[cell];

    /// <summary>How many cells one cell has holes to.</summary>
    internal int HoleCount(int cell) => behindHoles[cell].Count;

    /// <summary>One of those cells.</summary>
    internal int BehindHole(int cell, int hole) => behindHoles[cell][hole];

    /// <summary>Adds a panel between two cells, to the balance and to what both see.</summary>
    internal void AddPanel(int one, int other, Point3[] outline, AngleTable? table)
    {
        double passed = table?.DiffuseTransmittance ?? 1, thrown = table?.DiffuseReflectance ?? 0;
        var seen = new Facet(other, thrown, passed, outline, table is null);
        AddToBalance(one, other, seen.SquareMetres, table);
        See(one, seen);
        See(other, seen with { Other = one });
    }

    /// <summary>Adds a panel to the balance alone.</summary>
    internal void AddToBalance(int one, int other, double squareMetres, AngleTable? table)
    {
        Balance.Exchange(one, other, squareMetres * (table?.DiffuseTransmittance ?? 1));
        if (table is not null)
        {
            Balance.Absorb(one, squareMetres * table.DiffuseAbsorptance);
            Balance.Absorb(other, squareMetres * table.DiffuseAbsorptance);
        }
    }

    /// <summary>Adds a facet to what one cell sees.</summary>
    internal void See(int cell, Facet facet)
    {
        if (cell == Cells.Outdoors || cell == facet.Other)
        {
            return;
        }

        if (!facet.IsHole)
        {
            facets[cell].Add(facet);
            return;
        }

        List<int> behind = behindHoles[cell];
        int hole = behind.IndexOf(facet.Other);
        if (hole < 0)
        {
            hole = behind.Count;
            behind.Add(facet.Other);
        }

        facets[cell].Add(facet with { Hole = hole });
    }
}
