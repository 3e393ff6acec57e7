using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>Reads the half-range of a thickness.</summary>
internal static class ToleranceReader
{
    /// <summary>Reads it, if written; 0 where it is not, or with a mistake recorded.</summary>
    /// <param name="layer">The layer.</param>
    /// <param name="thicknessMetres">Its thickness, metres, which must stay above 0; null where not known here.</param>
    public static double Read(MappingReader layer, double? thicknessMetres)
    {
        double? tolerance = layer.OptionalLength("tolerance", TableLimits.Tolerance);
        if (tolerance >= thicknessMetres)
        {
            layer.Source.Error(
                layer.MarkOf("tolerance"),
                $"tolerance: {TableLimits.Tolerance.Show(tolerance.Value)} to either side leaves nothing of a layer {TableLimits.Thickness.Show(thicknessMetres.Value)} thick; give half of what lies between the thinnest and the thickest");
        }

        return tolerance ?? 0;
    }
}
