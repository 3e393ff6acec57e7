using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// A house laid out for tracing: flat arrays and an index, nothing a person wrote in it by name. It never changes, so any
/// number of threads may trace in it, each with a buffer of its own.
/// </summary>
public sealed class Scene
{
    private readonly Storey[] storeys;
    private readonly FloorSheets[] floors;
    private readonly FixtureBoxes fixtures;

    internal Scene(
        House house,
        Band band,
        IReadOnlyList<Storey> storeys,
        IReadOnlyList<FloorSheets> floors,
        FixtureBoxes fixtures,
        IReadOnlyList<Material> materials,
        IReadOnlyList<string> names)
    {
        House = house;
        Band = band;
        this.storeys = [.. storeys];
        this.floors = [.. floors];
        this.fixtures = fixtures;
        Materials = materials;
        Names = names;
        TableLossesDb = [.. materials.Select(m => m.LossDb)];
    }

    /// <summary>The house it was made from.</summary>
    public House House { get; }

    /// <summary>The channels losses are averaged over.</summary>
    public Band Band { get; }

    /// <summary>The materials hits name by number.</summary>
    internal IReadOnlyList<Material> Materials { get; }

    /// <summary>The names hits give by number.</summary>
    internal IReadOnlyList<string> Names { get; }

    /// <summary>Each material's table loss, dB.</summary>
    internal double[] TableLossesDb { get; }

    /// <summary>Lays a house out for Bluetooth's band.</summary>
    public static Scene Compile(House house) => SceneCompiler.Compile(house, Band.Bluetooth);

    /// <summary>Writes what the straight line meets into the buffer, in order from its start; a joint of walls counts once.</summary>
    internal void Trace(Point3 from, Point3 to, TraceBuffer buffer)
    {
        buffer.Clear();
        double length = from.DistanceTo(to);
        if (length <= Touching.SlackMetres)
        {
            return; // the same place: nothing lies between
        }

        double low = Math.Min(from.Z, to.Z), high = Math.Max(from.Z, to.Z);
        foreach (Storey storey in storeys)
        {
            if (low <= storey.High + Touching.SlackMetres && high >= storey.Low - Touching.SlackMetres)
            {
                storey.Walls.Trace(from, to, buffer);
            }
        }

        foreach (FloorSheets floor in floors)
        {
            floor.Trace(from, to, buffer);
        }

        fixtures.Trace(from, to, buffer);
        HitOrder.Arrange(buffer, length, TableLossesDb);
    }
}
