namespace LinkMargin.Cli.Output;

/// <summary>One direction's figures in tenths of a decibel: what is added and what is taken away, with its sign.</summary>
/// <param name="items">Transmit power, antenna gains, grip, what the receiver needs, path loss.</param>
internal sealed class PrintedDirection(IReadOnlyList<long> items)
{
    /// <summary>Power into the sender's antenna.</summary>
    public long Transmit => items[0];

    /// <summary>Both antennas' gains.</summary>
    public long AntennaGains => items[1];

    /// <summary>The grip, taken away.</summary>
    public long HandAndBody => items[2];

    /// <summary>The path loss, taken away.</summary>
    public long PathLoss => items[4];

    /// <summary>What arrives.</summary>
    public long Received => Transmit + AntennaGains + HandAndBody + PathLoss;

    /// <summary>What the receiver needs.</summary>
    public long Needed => -items[3];

    /// <summary>Received less needed.</summary>
    public long Margin => Received - Needed;
}
