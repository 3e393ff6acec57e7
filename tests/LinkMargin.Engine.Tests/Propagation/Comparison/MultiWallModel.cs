namespace LinkMargin.Engine.Tests.Propagation.Comparison;

/// <summary>
/// What walls and floors add to free space by the multi-wall model of COST Action 231, final report (1999), chapter 4. For
/// comparison only: its figures are of offices with concrete floors at 800 MHz to 1900 MHz.
/// </summary>
internal static class MultiWallModel
{
    /// <summary>L_w1, wall under 10 cm: plasterboard, light concrete with many windows, dB.</summary>
    public const double LightWallDb = 3.4;

    /// <summary>L_w2, wall over 10 cm: brick, concrete, dB.</summary>
    public const double HeavyWallDb = 6.9;

    /// <summary>L_f, reinforced concrete floor under 30 cm, dB.</summary>
    public const double FloorDb = 18.3;

    /// <summary>b, how much less each further floor costs.</summary>
    public const double Saturation = 0.46;

    /// <summary>Σ k_w·L_w + k_f^((k_f + 2)/(k_f + 1) − b)·L_f, dB; the constant L_C is 0 beside a full loss of free space.</summary>
    public static double AddedDb(int lightWalls, int heavyWalls, int floors)
    {
        double exponent = ((floors + 2.0) / (floors + 1)) - Saturation;
        return (lightWalls * LightWallDb) + (heavyWalls * HeavyWallDb) + (floors == 0 ? 0 : Math.Pow(floors, exponent) * FloorDb);
    }
}
