using LinkMargin.Engine.Diffuse;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Links.Stored;

/// <summary>One console's diffuse field with each material's loss shifted in turn.</summary>
internal sealed class ShiftedFields(Cells cells, CellSurfaces surfaces, IReadOnlyList<DiffuseField> byMaterial)
{
    /// <summary>The slope of the diffuse power at a place by each material's loss, dB for each dB; nothing where it has none.</summary>
    internal IEnumerable<(int Material, double Slope)> SlopesAt(Point3 hands, DiffuseField plain)
    {
        int cell = cells.At(hands);
        if (cell == Cells.Outdoors)
        {
            return [];
        }

        // What a place sees is geometry, the same for all of them.
        Outlook outlook = surfaces.From(hands, cell, new double[surfaces.Of(cell).Count + surfaces.HoleCount(cell)]);
        double density = plain.At(outlook);
        var slopes = new List<(int Material, double Slope)>();
        for (int material = 0; material < byMaterial.Count; material++)
        {
            double slope = LinkStore.SlopeOf(density, byMaterial[material].At(outlook));
            if (slope != 0)
            {
                slopes.Add((material, slope));
            }
        }

        return slopes;
    }
}
