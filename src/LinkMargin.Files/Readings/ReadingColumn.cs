using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Readings;

/// <summary>One column of a file of readings.</summary>
/// <param name="Heading">The heading it has in the template and in messages.</param>
/// <param name="Means">What stands in it.</param>
internal sealed record ReadingColumn(string Heading, string Means)
{
    /// <summary>Where the transmitter was, by name.</summary>
    public static ReadingColumn Transmitter { get; } = new("transmitter", "the spot or seat the transmitter was at");

    /// <summary>Where the receiver was, by name.</summary>
    public static ReadingColumn Receiver { get; } = new("receiver", "the seat or spot the receiver was at");

    /// <summary>What was received.</summary>
    public static ReadingColumn Received { get; } = new("received", "the level shown, in dBm, or 'not heard'");

    /// <summary>What it was received with.</summary>
    public static ReadingColumn Device { get; } = new("device", "what the level was read with");

    /// <summary>What sent.</summary>
    public static ReadingColumn Sender { get; } = new("sender", "what was sending, where there was more than one");

    /// <summary>Below which level nothing is heard.</summary>
    public static ReadingColumn NotHeardBelow { get; } = new("not heard below", "the level below which the device hears nothing, in dBm");

    /// <summary>Where the transmitter was, by coordinates.</summary>
    public static ReadingPlaceColumns TransmitterPlace { get; } = ReadingPlaceColumns.Of(Transmitter);

    /// <summary>Where the receiver was, by coordinates.</summary>
    public static ReadingPlaceColumns ReceiverPlace { get; } = ReadingPlaceColumns.Of(Receiver);

    /// <summary>Every column there may be.</summary>
    public static IReadOnlyList<ReadingColumn> All { get; } =
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
