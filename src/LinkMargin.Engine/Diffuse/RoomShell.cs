using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Diffuse;

/// <summary>The facets of every cell, and the power balance they make: built together, so that both tell the same story.</summary>
internal sealed class RoomShell
{
    private readonly List<Facet>[] facets;

    internal RoomShell(int cells)
    {
        Balance = new PowerBalance(cells);
        facets = [.. Enumerable.Range(0, cells).Select(_ => new List<Facet>())];
    }

    /// <summary>The power balance.</summary>
    internal PowerBalance Balance { get; }

    /// <summary>The facets of one cell.</summary>
    internal IReadOnlyList<Facet> Of(int cell) => facets[cell];

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
        if (cell != Cells.Outdoors && cell != facet.Other)
        {
            facets[cell].Add(facet);
        }
    }
}
