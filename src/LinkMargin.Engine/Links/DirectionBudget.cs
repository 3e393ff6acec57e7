namespace LinkMargin.Engine.Links;

/// <summary>One direction of a link, from transmit power to margin.</summary>
/// <param name="From">The sending end: <c>controller</c> or <c>console</c>.</param>
/// <param name="To">The receiving end.</param>
/// <param name="TransmitDbm">Power into the sender's antenna, dBm.</param>
/// <param name="AntennaGainsDb">Both antennas' mean gains together, dB.</param>
/// <param name="HandAndBodyDb">Allowance for the grip, both ends together, dB.</param>
/// <param name="ReceivedDbm">Local mean level at the receiver, dBm.</param>
/// <param name="NeededDbm">The receiver's sensitivity, dBm.</param>
/// <param name="MarginDb">Received less needed, dB.</param>
public sealed record DirectionBudget(
    string From,
    string To,
    double TransmitDbm,
    double AntennaGainsDb,
    double HandAndBodyDb,
    double ReceivedDbm,
    double NeededDbm,
    double MarginDb);
