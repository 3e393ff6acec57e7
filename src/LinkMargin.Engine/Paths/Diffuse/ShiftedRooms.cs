using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// The power balance of a house's rooms with each material's loss shifted in turn, for the slopes of the diffuse field.
/// Computed on first use.
/// </summary>
internal sealed class ShiftedRooms
{
    private readonly RoomShell shell;
    private readonly int materials;
    private readonly Cells cells;
    private readonly Lazy<RoomShell?[]> shells; // by the material that is shifted; null for one that no surface is made of

    internal ShiftedRooms(RoomShell shell, int materials, Cells cells)
    {
        this.shell = shell;
        this.materials = materials;
        this.cells = cells;
        shells = new(Shifted);
    }

    /// <summary>The diffuse fields of one console.</summary>
    /// <param name="plain">Its field with no loss shifted.</param>
    internal ShiftedFields FieldsFrom(DiffuseField plain)
    {
        RoomShell?[] shifted = shells.Value;
        var fields = new DiffuseField[shifted.Length];
        Parallel.For(0, fields.Length, material =>
            fields[material] = shifted[material] is { } other ? plain.With(other) : plain);
        return new(cells, shell.Surfaces, plain, fields);
    }

    private RoomShell?[] Shifted()
    {
        var shifted = new RoomShell?[materials];
        Parallel.For(0, shifted.Length, material =>
            shifted[material] = shell.Surfaces.IsMadeOf(material) ? shell.Shifted(material, LossGradients.StepDb) : null);
        return shifted;
    }
}

/// <summary>One console's diffuse field with each material's loss shifted in turn.</summary>
internal sealed class ShiftedFields(Cells cells, CellSurfaces surfaces, DiffuseField plain, IReadOnlyList<DiffuseField> byMaterial)
{
    /// <summary>The slope of the diffuse power at a place by each material's loss, dB per dB; only those that are not 0.</summary>
    internal IEnumerable<(int Material, double Slope)> SlopesAt(Point3 place)
    {
        int cell = cells.At(place);

        // What a place sees is geometry, the same for all of them.
        ViewFactors views = surfaces.Views.From(place, cell, new double[surfaces.Views.Numbers(cell)]);
        double density = plain.At(views);
        var slopes = new List<(int Material, double Slope)>();
        for (int material = 0; material < byMaterial.Count; material++)
        {
            double slope = LossGradients.SlopeOf(density, byMaterial[material].At(views));
            if (slope != 0)
            {
                slopes.Add((material, slope));
            }
        }

        return slopes;
    }
}
