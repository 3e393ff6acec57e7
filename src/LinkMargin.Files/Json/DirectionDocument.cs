using LinkMargin.Engine.Links;

namespace LinkMargin.Files.Json;

/// <summary>One direction of a link, as JSON.</summary>
/// <param name="From">The sending end.</param>
/// <param name="To">The receiving end.</param>
/// <param name="TransmitDbm">Power into the sender's antenna, dBm.</param>
/// <param name="AntennaGainsDb">Both antennas' mean gains together, dB.</param>
/// <param name="HandAndBodyDb">Allowance for the grip, dB.</param>
/// <param name="ReceivedDbm">Local mean level at the receiver, dBm.</param>
/// <param name="NeededDbm">The receiver's sensitivity, dBm.</param>
/// <param name="TableMedianDb">Received less needed, dB: a median margin, since every loss is its table's median.</param>
public sealed record DirectionDocument(
    string From,
    string To,
    double TransmitDbm,
    double AntennaGainsDb,
    double HandAndBodyDb,
    double ReceivedDbm,
    double NeededDbm,
    double TableMedianDb)
{
    internal static DirectionDocument Of(DirectionBudget direction) => new(
        direction.From,
        direction.To,
        direction.TransmitDbm,
        direction.AntennaGainsDb,
        direction.HandAndBodyDb,
        direction.ReceivedDbm,
        direction.NeededDbm,
        direction.MarginDb);
}
