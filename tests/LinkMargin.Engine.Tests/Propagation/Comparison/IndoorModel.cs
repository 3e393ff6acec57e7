namespace LinkMargin.Engine.Tests.Propagation.Comparison;

/// <summary>
/// Both site-general forms of Recommendation ITU-R P.1238. For comparison only: they average the walls in, so they say what
/// a house does on the whole and never what one wall does.
/// </summary>
internal static class IndoorModel
{
    /// <summary>N, residential, 1.8 GHz to 2.4 GHz (P.1238-9, Table 2), dB a decade.</summary>
    public const double ResidentialPerDecadeDb = 28;

    /// <summary>20·lg f − 28 + N·lg d + L_f(n), f in MHz, d in m above 1 (P.1238-9, section 3.1, kept as equation (2) of -13).</summary>
    public static double ClassicLossDb(double megahertz, double distanceMetres, double floorLossDb) =>
        (20 * Math.Log10(megahertz)) - 28 + (ResidentialPerDecadeDb * Math.Log10(distanceMetres)) + floorLossDb;

    /// <summary>10·α·lg d + β + 10·γ·lg f, d in m, f in GHz (P.1238-11, section 3.1); same floor only.</summary>
    public static double SiteGeneralLossDb(double gigahertz, double distanceMetres, double alpha, double beta, double gamma) =>
        (10 * alpha * Math.Log10(distanceMetres)) + beta + (10 * gamma * Math.Log10(gigahertz));
}
