using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Links;

/// <summary>The losses of a scene's materials: what turns the geometry of paths into decibels.</summary>
internal sealed class LossTables
{
    private readonly AngleTable[] tables;

    internal LossTables(IReadOnlyList<Material> materials, Band band)
    {
        tables = new AngleTable[materials.Count];
        Parallel.For(0, tables.Length, i => tables[i] = new AngleTable(materials[i], band));
    }

    /// <summary>One material's table.</summary>
    internal AngleTable this[int material] => tables[material];

    /// <summary>Loss of one crossing, dB.</summary>
    internal double Db(in Hit hit) => CrossingLoss.Db(hit.Kind, hit.Share, tables[hit.Material].LossDb(hit.CosIncidence));

    /// <summary>Amplitude that passes a piece of a ray's front, and beside it through its holes.</summary>
    internal double Amplitude(in Piece piece)
    {
        double through = Through(piece);
        return through + (piece.Beside * (1 - through));
    }

    private double Through(in Piece piece)
    {
        AngleTable table = tables[piece.Material];
        if (piece.IsRibs)
        {
            // The loss of ribs belongs to a member's whole depth, whichever way it is crossed.
            return 1 - (piece.Share * (1 - table.Amplitude(1)));
        }

        double amplitude = table.Amplitude(piece.CosIncidence);
        return piece.Share == 1 ? amplitude : Math.Pow(amplitude, piece.Share);
    }
}
