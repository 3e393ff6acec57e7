using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Houses;

/// <summary>One end of a link.</summary>
/// <param name="Name">The word used in house files, such as <c>controller-typical</c>.</param>
/// <param name="TransmitPower">Power into its antenna, dBm.</param>
/// <param name="AntennaGainDb">Mean gain of its antenna over directions, dBi; below 0 for small antennas. See <see cref="GainIncludesMismatch"/>.</param>
/// <param name="Sensitivity">The weakest level it receives at its stated error rate, dBm.</param>
/// <param name="HandAndBodyDb">Allowance for the grip, dB, 0 for a thing that stands on a shelf.</param>
/// <param name="SpreadDb">One standard deviation between units and ways of holding, dB.</param>
/// <param name="Source">A citation, <c>common practice</c> or <c>from memory</c>.</param>
public sealed record Radio(
    string Name,
    PowerLevel TransmitPower,
    double AntennaGainDb,
    PowerLevel Sensitivity,
    double HandAndBodyDb,
    double SpreadDb,
    string Source)
{
    /// <summary>
    /// Whether the gain is stated for one polarisation and so includes the polarisation mismatch. Otherwise it counts the power of
    /// both polarisations, as a radiation efficiency does.
    /// </summary>
    public bool GainIncludesMismatch { get; init; }

    /// <summary>What it is, in words.</summary>
    public string Description { get; init; } = "";
}
