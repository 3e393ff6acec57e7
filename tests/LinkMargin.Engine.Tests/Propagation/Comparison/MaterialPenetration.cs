namespace LinkMargin.Engine.Tests.Propagation.Comparison;

/// <summary>Penetration loss of materials by 3GPP TR 38.901, Table 7.4.3-1. For comparison only.</summary>
internal static class MaterialPenetration
{
    /// <summary>Offset + slope·f, f in GHz, dB.</summary>
    public static double LossDb(double offsetDb, double slopeDbPerGigahertz, double gigahertz) =>
        offsetDb + (slopeDbPerGigahertz * gigahertz);
}
