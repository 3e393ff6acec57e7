using LinkMargin.Engine.Diffuse;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Links.Stored;

/// <summary>
/// The power balance of a house's rooms with each material's loss shifted in turn, for how the diffuse field changes with it.
/// Worked out only once it is asked for.
/// </summary>
internal sealed class ShiftedRooms
{
    private readonly Scene scene;
    private readonly LossTables losses;
    private readonly Cells cells;
    private readonly Lazy<RoomShell[]> shells; // by the material that is shifted

    internal ShiftedRooms(Scene scene, LossTables losses, Cells cells)
    {
        this.scene = scene;
        this.losses = losses;
        this.cells = cells;
        shells = new(() => Shifted());
    }

    /// <summary>The diffuse fields of one console.</summary>
    /// <param name="console">Where it is.</param>
    /// <param name="sources">What its direct energy and first reflections leave behind at the table's losses.</param>
    internal ShiftedFields FieldsFrom(Point3 console, IReadOnlyList<double> sources)
    {
        double[,] changes = EnergySources.Changes(scene, losses, cells, console, LinkStore.StepDb);
        return new ShiftedFields(
            [.. shells.Value.Select((shell, material) => new DiffuseField(
                cells, shell, [.. sources.Select((left, cell) => Math.Max(0, left + changes[material, cell]))]))]);
    }

    private RoomShell[] Shifted()
    {
        var shifted = new RoomShell[scene.Materials.Count];
        Parallel.For(0, shifted.Length, material =>
            shifted[material] = BalanceBuilder.Build(scene, losses.Shifted(material, LinkStore.StepDb), cells));
        return shifted;
    }
}
