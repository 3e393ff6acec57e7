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
    // Two perfect mirrors would reflect for ever.
    private const double LeastShare = 1e-12;

    private readonly LossTables losses;

    internal RoomShell(CellSurfaces surfaces, LossTables losses)
    {
        Surfaces = surfaces;
        this.losses = losses;
        Balance = new PowerBalance(surfaces.Count);
        Exchange = new SurfaceExchange(surfaces, PowerOf);
        Solver = new ExchangeSolver(Exchange, Balance);
        Parallel.For(0, surfaces.Count, cell => surfaces.FormFactorsOf(cell));
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
            Balance.Absorb(cell, surfaces.FurnishingSquareMetres(cell));
        }
    }

    private RoomShell(RoomShell near, int material, double moreDb)
    {
        Surfaces = near.Surfaces;
        losses = near.losses.Shifted(material, moreDb);
        Balance = near.Balance;
        Exchange = new SurfaceExchange(near.Exchange, material, PowerOf);
        Solver = new ExchangeSolver(Exchange, Balance);
        foreach (Panel panel in Surfaces.Panels)
        {
            if (panel.One == panel.Other && panel.Sheets.Length > 0)
            {
                SheetPower power = PowerOf(panel.Sheets);
                AddThing(panel, power.Passed, power.ReflectedNear, panel.Sheets[0].IsMirror);
                AddThing(panel, power.Passed, power.ReflectedFar, panel.Sheets[^1].IsMirror);
            }
        }

        foreach (Solid solid in Surfaces.Solids)
        {
            AddThing(solid, PowerOf(solid));
        }
    }

    /// <summary>
    /// The same with slightly more loss in one material. Its power balance stays that of this one: it only corrects the steps by which the exchange is
    /// solved.
    /// </summary>
    internal RoomShell Shifted(int material, double moreDb) => new(this, material, moreDb);

    /// <summary>The surfaces.</summary>
    internal CellSurfaces Surfaces { get; }

    /// <summary>The exchange of power between their facets.</summary>
    internal SurfaceExchange Exchange { get; }

    /// <summary>Solves what follows from power that strikes them.</summary>
    internal ExchangeSolver Solver { get; }

    /// <summary>The power balance of whole cells.</summary>
    internal PowerBalance Balance { get; }

    private void Add(Panel panel)
    {
        if (panel.Sheets.Length == 0)
        {
            Balance.Exchange(panel.One, panel.Other, panel.SquareMetres);
            return;
        }

        SheetPower power = PowerOf(panel.Sheets);
        Balance.Exchange(panel.One, panel.Other, panel.SquareMetres * power.Passed);
        Add(panel, panel.One, power.Passed, power.ReflectedNear, panel.Sheets[0].IsMirror);
        Add(panel, panel.Other, power.Passed, power.ReflectedFar, panel.Sheets[^1].IsMirror);
    }

    private void Add(Panel panel, int cell, double passed, double reflected, bool isMirror)
    {
        Balance.Reflect(cell, panel.SquareMetres * reflected, isMirror);
        double absorbing = panel.SquareMetres * Math.Max(0, 1 - passed - reflected);
        Balance.Absorb(cell, absorbing);
        if (panel.One == panel.Other)
        {
            AddThing(panel, passed, reflected, isMirror);
        }
    }

    private void AddThing(Panel panel, double passed, double reflected, bool isMirror) =>
        Exchange.AddThing(panel.One, panel.SquareMetres * (1 - passed), panel.SquareMetres * reflected, isMirror);

    // Layers that are some wavelengths apart, or at an unknown distance: their powers add, over all reflections between them:
    // T = T1·T2 / (1 − R1·R2).
    internal SheetPower PowerOf(Sheet[] sheets)
    {
        var all = new SheetPower(1, 0, 0);
        foreach (Sheet sheet in sheets)
        {
            (double through, double back) = PowerOf(sheet);
            double once = 1 / Math.Max(LeastShare, 1 - (all.ReflectedFar * back));
            all = new SheetPower(
                all.Passed * through * once,
                all.ReflectedNear + (all.Passed * all.Passed * back * once),
                back + (through * through * all.ReflectedFar * once));
        }

        return all;
    }

    private (double Passed, double Reflected) PowerOf(Sheet sheet)
    {
        AngleTable table = losses[sheet.Material];
        if (sheet.Depths is not double depths)
        {
            return (table.DiffuseTransmittance, table.DiffuseReflectance);
        }

        double passed = Decibels.ToPowerRatio(-table.LossDb(1) * depths);
        return (passed, Math.Min(table.DiffuseReflectance, 1 - passed));
    }

    private void Add(Solid solid)
    {
        (double Passed, double Reflected) power = PowerOf(solid);
        Balance.Absorb(solid.Cell, solid.SquareMetres * (1 - power.Passed - power.Reflected));
        AddThing(solid, power);
        Balance.Reflect(solid.Cell, solid.SquareMetres * power.Reflected, solid.IsMirror);
    }

    private void AddThing(Solid solid, (double Passed, double Reflected) power) =>
        Exchange.AddThing(solid.Cell, solid.SquareMetres * (1 - power.Passed), solid.SquareMetres * power.Reflected, solid.IsMirror);

    private (double Passed, double Reflected) PowerOf(Solid solid) => PowerOf(new Sheet(solid.Material, solid.Depths, solid.IsMirror));
}
