using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// The surfaces of every cell with their losses: what each facet reflects and passes, and the power balance they make,
/// from the same tables.
/// </summary>
internal sealed class RoomShell
{
    private readonly LossTables losses;

    internal RoomShell(CellSurfaces surfaces, LossTables losses)
    {
        Surfaces = surfaces;
        this.losses = losses;
        Balance = new PowerBalance(surfaces.Count);
        foreach (Panel panel in surfaces.Panels)
        {
            Add(panel);
        }

        foreach (Solid solid in surfaces.Solids)
        {
            Add(solid);
        }

        for (int cell = 0; cell < surfaces.Count; cell++)
        {
            Balance.Fill(cell, surfaces.CubicMetres(cell));
            Balance.AbsorbWithin(cell, surfaces.FurnishingSquareMetres(cell));
        }
    }

    /// <summary>The surfaces.</summary>
    internal CellSurfaces Surfaces { get; }

    /// <summary>The power balance.</summary>
    internal PowerBalance Balance { get; }

    /// <summary>Share of what strikes a facet that it reflects.</summary>
    internal double Reflected(Facet facet) => facet.IsHole ? 0 : losses[facet.Material].DiffuseReflectance;

    /// <summary>Share of what strikes a facet that it passes.</summary>
    internal double Passed(Facet facet) => facet.IsHole ? 1 : losses[facet.Material].DiffuseTransmittance;

    private void Add(Panel panel)
    {
        if (panel.Material == Facet.Nothing)
        {
            Balance.Exchange(panel.One, panel.Other, panel.SquareMetres);
            return;
        }

        AngleTable table = losses[panel.Material];
        Balance.Exchange(panel.One, panel.Other, panel.SquareMetres * table.DiffuseTransmittance);
        foreach (int cell in new[] { panel.One, panel.Other })
        {
            Balance.Reflect(cell, panel.SquareMetres * table.DiffuseReflectance, panel.IsMirror);
            double absorbing = panel.SquareMetres * table.DiffuseAbsorptance;
            if (panel.One == panel.Other)
            {
                Balance.AbsorbWithin(cell, absorbing);
            }
            else
            {
                Balance.Absorb(cell, absorbing);
            }
        }
    }

    private void Add(Solid solid)
    {
        AngleTable table = losses[solid.Material];
        double passed = Decibels.ToPowerRatio(-table.LossDb(1) * solid.Depths);
        double reflected = Math.Min(table.DiffuseReflectance, 1 - passed);
        Balance.AbsorbWithin(solid.Cell, solid.SquareMetres * (1 - passed - reflected));
        Balance.Reflect(solid.Cell, solid.SquareMetres * reflected, solid.IsMirror);
    }
}
