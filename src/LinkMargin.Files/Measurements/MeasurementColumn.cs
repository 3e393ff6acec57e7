using LinkMargin.Engine.Quantities;

namespace LinkMargin.Files.Measurements;

/// <summary>One column of a file of readings.</summary>
/// <param name="Heading">The heading it has in the template and in messages.</param>
/// <param name="Means">What stands in it.</param>
internal sealed record MeasurementColumn(string Heading, string Means)
{
    /// <summary>Where the transmitter was, by name.</summary>
    public static MeasurementColumn Transmitter { get; } = new("transmitter", "the spot or seat the transmitter was at");

    /// <summary>Where the receiver was, by name.</summary>
    public static MeasurementColumn Receiver { get; } = new("receiver", "the seat or spot the receiver was at");

    /// <summary>What was received.</summary>
    public static MeasurementColumn Received { get; } = new("received", "the level shown, in dBm, or 'not heard'");

    /// <summary>What it was received with.</summary>
    public static MeasurementColumn Device { get; } = new("device", "what the level was read with");

    /// <summary>What sent.</summary>
    public static MeasurementColumn Sender { get; } = new("sender", "what was sending, where there was more than one");

    /// <summary>Below which level nothing is heard.</summary>
    public static MeasurementColumn NotHeardBelow { get; } = new("not heard below", "the level below which the device hears nothing, in dBm");

    /// <summary>Where the transmitter was, by coordinates.</summary>
    public static MeasurementPlaceColumns TransmitterPlace { get; } = MeasurementPlaceColumns.Of(Transmitter);

    /// <summary>Where the receiver was, by coordinates.</summary>
    public static MeasurementPlaceColumns ReceiverPlace { get; } = MeasurementPlaceColumns.Of(Receiver);

    /// <summary>Every column there may be.</summary>
    public static IReadOnlyList<MeasurementColumn> All { get; } =
    [
        Transmitter, Receiver, Received, Device, Sender, NotHeardBelow, .. TransmitterPlace.All, .. ReceiverPlace.All,
    ];

    /// <summary>Whether it holds a length, and so may have a unit in its heading.</summary>
    public bool IsLength { get; init; }

    /// <summary>What is allowed where a heading names a unit.</summary>
    public bool TakesUnit(string word) => IsLength
        ? LengthUnits.FromWord(word) is not null
        : (this == Received || this == NotHeardBelow) && word.Equals("dBm", StringComparison.OrdinalIgnoreCase);
}
