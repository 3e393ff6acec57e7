using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Links;

/// <summary>The two radios of a link, and the margins they have at a path loss.</summary>
/// <param name="Console">The console's radio.</param>
/// <param name="Controller">The controller's radio.</param>
public sealed record RadioPair(Radio Console, Radio Controller)
{
    /// <summary>The path loss at which the worse direction has no margin left, dB. The margin is this minus the path loss.</summary>
    public double GreatestLossDb { get; } = Math.Min(LossAtZeroMargin(Controller, Console), LossAtZeroMargin(Console, Controller));

    /// <summary>Both directions at a path loss, controller to console first.</summary>
    /// <param name="pathLossDb">Path loss, dB.</param>
    public IReadOnlyList<DirectionBudget> Directions(double pathLossDb) =>
    [
        Direction("controller", Controller, "console", Console, pathLossDb),
        Direction("console", Console, "controller", Controller, pathLossDb),
    ];

    /// <summary>Loss by polarisation mismatch of two antennas of unknown orientation, dB; the same in both directions and on every path.</summary>
    public double PolarisationDb => PolarisationMismatchDb(Console, Controller);

    private static double PolarisationMismatchDb(Radio one, Radio other) =>
        PolarisationMismatch.Db(one.GainIncludesMismatch, other.GainIncludesMismatch);

    private static DirectionBudget Direction(string from, Radio sender, string to, Radio receiver, double pathLossDb)
    {
        Decibels gains = new(sender.AntennaGainDb + receiver.AntennaGainDb);
        Decibels grip = new(sender.HandAndBodyDb + receiver.HandAndBodyDb);
        Decibels polarisation = new(PolarisationMismatchDb(sender, receiver));
        PowerLevel received = sender.TransmitPower + gains - grip - polarisation - new Decibels(pathLossDb);
        return new DirectionBudget(
            from,
            to,
            sender.TransmitPower.Dbm,
            gains.Db,
            grip.Db,
            polarisation.Db,
            received.Dbm,
            receiver.Sensitivity.Dbm,
            (received - receiver.Sensitivity).Db);
    }

    private static double LossAtZeroMargin(Radio sender, Radio receiver) =>
        (sender.TransmitPower - receiver.Sensitivity).Db
        + sender.AntennaGainDb + receiver.AntennaGainDb
        - sender.HandAndBodyDb - receiver.HandAndBodyDb - PolarisationMismatchDb(sender, receiver);
}

/// <summary>One direction of a link, from transmit power to margin.</summary>
/// <param name="From">The sending end: <c>controller</c> or <c>console</c>.</param>
/// <param name="To">The receiving end.</param>
/// <param name="TransmitDbm">Power into the sender's antenna, dBm.</param>
/// <param name="AntennaGainsDb">Both antennas' mean gains together, dB.</param>
/// <param name="HandAndBodyDb">Allowance for the grip, both ends together, dB.</param>
/// <param name="PolarisationDb">Loss by polarisation mismatch, dB; 0 where one end's gain includes it.</param>
/// <param name="ReceivedDbm">Local mean level at the receiver, dBm.</param>
/// <param name="SensitivityDbm">The receiver's sensitivity, dBm.</param>
/// <param name="MarginDb">Received level minus sensitivity, dB.</param>
public sealed record DirectionBudget(
    string From,
    string To,
    double TransmitDbm,
    double AntennaGainsDb,
    double HandAndBodyDb,
    double PolarisationDb,
    double ReceivedDbm,
    double SensitivityDbm,
    double MarginDb);
