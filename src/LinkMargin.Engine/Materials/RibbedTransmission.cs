using System.Numerics;

namespace LinkMargin.Engine.Materials;

/// <summary>
/// Transmission of a panel with ribs (studs, joists) from those through a rib and between ribs. Own derivation.
/// <para>
/// What arrives straight on is the mean of the field over the first Fresnel zone where it meets the panel (Huygens: all
/// patches of the zone add their fields with nearly the same phase). The zone is 0.2 m to 0.6 m across in a house, the ribs'
/// spacing 0.3 m to 0.6 m. So the zone covers part of a rib and part of a gap, fields and not powers add within it, and
/// T = q·τ_rib + (1 − q)·τ_gap, with q the share of the zone that ribs cover (<see cref="RibShare"/>). Power that the ribs scatter
/// out of the straight direction is not in T. With zones far wider than the spacing it would return as diffraction orders; with
/// zones far narrower q is 0 or 1. Either way T stays between the two transmissions.
/// </para>
/// </summary>
public static class RibbedTransmission
{
    /// <summary>T from complex transmissions at one frequency, angle and polarisation.</summary>
    /// <param name="share">q, share of the zone covered by ribs, 0 to 1.</param>
    /// <param name="rib">τ_rib, through a rib and whatever lies before and behind it.</param>
    /// <param name="gap">τ_gap, between ribs.</param>
    public static Complex Amplitude(double share, Complex rib, Complex gap)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(share);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(share, 1);
        return (share * rib) + ((1 - share) * gap);
    }

    /// <summary>Loss where only losses are known: the two fields are taken to be in phase.</summary>
    /// <param name="share">q, share of the zone covered by ribs, 0 to 1.</param>
    /// <param name="ribLossDb">Loss through a rib and whatever lies before and behind it, dB, 0 or more.</param>
    /// <param name="gapLossDb">Loss between ribs, dB, 0 or more.</param>
    /// <returns>dB, between the two.</returns>
    public static double LossDb(double share, double ribLossDb, double gapLossDb)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(ribLossDb);
        ArgumentOutOfRangeException.ThrowIfNegative(gapLossDb);
        double amplitude = Amplitude(share, Math.Pow(10, -ribLossDb / 20), Math.Pow(10, -gapLossDb / 20)).Real;
        return LayeredSlab.LossDbOf(amplitude * amplitude);
    }
}
