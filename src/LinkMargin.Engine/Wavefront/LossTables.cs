using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Wavefront;

/// <summary>The losses of a scene's materials: what turns the geometry of paths into decibels.</summary>
internal sealed class LossTables
{
    private readonly IReadOnlyList<Material> materials;
    private readonly AngleTable[] tables;

    /// <summary>Computes them.</summary>
    /// <param name="materials">The materials.</param>
    /// <param name="band">The band.</param>
    /// <param name="akin">The tables of a house in the same band, reused for the materials it shares with this one; null for none.</param>
    internal LossTables(IReadOnlyList<Material> materials, Band band, LossTables? akin = null)
        : this(materials, new AngleTable[materials.Count]) =>
        Parallel.For(0, tables.Length, i => tables[i] = akin?.Find(materials[i]) ?? new AngleTable(materials[i], band));

    private LossTables(IReadOnlyList<Material> materials, AngleTable[] tables) => (this.materials, this.tables) = (materials, tables);

    /// <summary>How many materials there are.</summary>
    internal int Count => tables.Length;

    /// <summary>One material's table.</summary>
    internal AngleTable this[int material] => tables[material];

    /// <summary>Loss of one crossing, dB.</summary>
    internal double Db(in Hit hit, double moreDb = 0) =>
        CrossingLoss.Db(hit.Kind, hit.Share, tables[hit.Material].LossDb(hit.IsSolid ? 1 : hit.CosIncidence) + moreDb);

    /// <summary>The same with one material's loss shifted.</summary>
    internal LossTables Shifted(int material, double moreDb) =>
        new(materials, [.. tables.Select((table, i) => i == material ? table.Shifted(moreDb) : table)]);

    private AngleTable? Find(Material material)
    {
        for (int i = 0; i < tables.Length; i++)
        {
            if (IsSame(materials[i], material))
            {
                return tables[i];
            }
        }

        return null;
    }

    // A floor as one material is made again for each house, with a list of layers of its own.
    private static bool IsSame(Material one, Material other) =>
        one == other || (one.Name == other.Name && one.Layers.SequenceEqual(other.Layers) && one with { Layers = other.Layers } == other);

    /// <summary>Amplitude that passes a piece of a ray's front, and beside it through its holes.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="moreDb">How much more its material loses than its table says, dB.</param>
    internal double Amplitude(in Piece piece, double moreDb = 0)
    {
        double through = Through(piece, moreDb);
        return through + (piece.Beside * (1 - through));
    }

    private double Through(in Piece piece, double moreDb)
    {
        double more = moreDb == 0 ? 1 : Math.Pow(10, -moreDb / 20);
        AngleTable table = tables[piece.Material];
        if (piece.IsRibs)
        {
            // The loss of ribs is that of a member's whole depth, whatever the angle.
            return 1 - (piece.Share * (1 - (more * table.Amplitude(1))));
        }

        double amplitude = more * table.Amplitude(piece.CosIncidence);
        return piece.Share == 1 ? amplitude : Math.Pow(amplitude, piece.Share);
    }
}
