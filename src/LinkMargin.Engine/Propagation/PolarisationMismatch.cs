namespace LinkMargin.Engine.Propagation;

/// <summary>
/// What two antennas of unknown orientation lose because their polarisations differ. The only place where it is counted: every path of
/// a link is computed for matched antennas, and the link's budget subtracts this loss once.
/// <para>
/// Derivation. Friis' formula with total gains G = 4πU/P (U the power of both polarisations for each unit of solid angle) gives the
/// power that arrives by a path in a matched antenna. One of polarisation q (a unit vector, complex for elliptical polarisation) takes
/// the share |p·q*|² of a wave of polarisation p. The orthogonal partner of q takes the rest, since the two form a basis:
/// |p·q*|² + |p·q⊥*|² = 1. Where it is not known how the antennas are held, q and its partner are equally likely, so the mean share
/// is 1/2 whatever p is; for two linear antennas it is the mean of cos² ψ over a uniform ψ. It holds for each path, whatever walls do
/// to its polarisation, and so for their sum. A diffuse field has no polarisation of its own: an antenna takes λ²/4π · 1/2 = λ²/8π of
/// it (D. A. Hill, Electromagnetic Fields in Cavities, 2009, from memory), the same half.
/// </para>
/// <para>
/// A gain stated for one polarisation (the mean over orientations of what a fixed antenna of one polarisation receives) already
/// includes the half: Friis with one such gain needs no more, and with two counts it once too often.
/// </para>
/// </summary>
public static class PolarisationMismatch
{
    /// <summary>The mean loss where gains count both polarisations, dB: 3.01.</summary>
    public static readonly double MeanDb = 10 * Math.Log10(2);

    /// <summary>Loss of a link, dB; below 0 where both gains include it, which then is counted once too often.</summary>
    /// <param name="isInOne">Whether the gain of one end includes the mismatch.</param>
    /// <param name="isInOther">Whether the gain of the other end does.</param>
    public static double Db(bool isInOne, bool isInOther) => MeanDb * (1 - (isInOne ? 1 : 0) - (isInOther ? 1 : 0));
}
