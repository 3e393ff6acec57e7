using LinkMargin.Engine.Links.Stored;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// How far a material's loss in one place lies from that in another of the same house: the share of its row's variance that
/// belongs to each crossing, and what the tolerance of its layers does, since no cavity is as deep as the next. The two add as
/// variances: a row's spread is of how far its figure is out for a wall built just as the row says.
/// </summary>
internal static class PlaceSpreads
{
    /// <summary>One standard deviation for each material, dB.</summary>
    internal static double[] Of(StoredPaths stored, UncertaintyBasis basis) =>
        [.. stored.Materials.Select((material, i) =>
            double.Hypot(basis.Spreads.EachCrossingDb(material.SpreadDb), stored.ToleranceSpreadsDb[i]))];
}
