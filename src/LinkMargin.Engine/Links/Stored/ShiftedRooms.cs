using LinkMargin.Engine.Diffuse;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Links.Stored;

/// <summary>
/// The power balance of a house's rooms with each material's loss shifted in turn, for how the diffuse field changes with it.
/// Worked out only once it is asked for.
/// </summary>
internal sealed class ShiftedRooms
{
    private readonly RoomShell shell;
    private readonly LossTables losses;
    private readonly Cells cells;
    private readonly Lazy<RoomShell[]> shells; // by the material that is shifted

    internal ShiftedRooms(RoomShell shell, LossTables losses, Cells cells)
    {
        this.shell = shell;
        this.losses = losses;
        this.cells = cells;
        shells = new(Shifted);
    }

    /// <summary>The diffuse fields of one console.</summary>
    internal ShiftedFields FieldsFrom(Point3 console)
    {
        RoomShell[] shifted = shells.Value;
        var fields = new DiffuseField[shifted.Length];
        Parallel.For(0, fields.Length, material => fields[material] = new DiffuseField(cells, shifted[material], console));
        return new(cells, shell.Surfaces, fields);
    }

    private RoomShell[] Shifted()
    {
        var shifted = new RoomShell[losses.Count];
        Parallel.For(0, shifted.Length, material =>
            shifted[material] = new RoomShell(shell.Surfaces, losses.Shifted(material, LinkStore.StepDb)));
        return shifted;
    }
}
