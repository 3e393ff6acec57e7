using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Paths;

/// <summary>Path losses as they are reported.</summary>
internal static class PathLoss
{
    /// <summary>
    /// The greatest path loss that either model reports, dB; a greater one is reported as this. It is some 100 dB beyond what any
    /// radio hears, so no decision depends on it.
    /// </summary>
    internal const double GreatestDb = LayeredSlab.GreatestLossDb;

    /// <summary>A path loss as it is reported, dB.</summary>
    internal static double Reported(double lossDb) => Math.Min(GreatestDb, lossDb);

    /// <summary>A power, share of the transmitted power, as the loss that is reported, dB.</summary>
    internal static double FromPowerRatio(double powerRatio) => Reported(Decibels.LossFromPowerRatio(Math.Max(powerRatio, double.Epsilon)));
}
