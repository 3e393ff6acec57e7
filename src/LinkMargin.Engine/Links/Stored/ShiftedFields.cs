using LinkMargin.Engine.Diffuse;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Links.Stored;

/// <summary>One console's diffuse field with each material's loss shifted in turn.</summary>
internal sealed class ShiftedFields(IReadOnlyList<DiffuseField> byMaterial)
{
    /// <summary>The slope of the diffuse power at a place by each material's loss, dB for each dB; nothing where it has none.</summary>
    internal IEnumerable<(int Material, double Slope)> SlopesAt(Point3 hands, double density)
    {
        for (int material = 0; material < byMaterial.Count; material++)
        {
            double slope = 10 * Math.Log10(density / byMaterial[material].At(hands)) / LinkStore.StepDb;
            if (slope != 0)
            {
                yield return (material, slope);
            }
        }
    }
}
