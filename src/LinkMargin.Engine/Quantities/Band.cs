namespace LinkMargin.Engine.Quantities;

/// <summary>
/// The channels a hopping link uses. A player experiences the mean over them, so the loss of a band is that of the received
/// power averaged over its channels.
/// </summary>
public sealed class Band
{
    private readonly Frequency[] channels;

    /// <summary>Makes a band of at least one channel.</summary>
    public Band(IEnumerable<Frequency> channels)
    {
        this.channels = [.. channels];
        ArgumentOutOfRangeException.ThrowIfZero(this.channels.Length, nameof(channels));
        Equivalent = EquivalentOf(this.channels);
    }

    /// <summary>
    /// Bluetooth BR/EDR: 79 channels, f = 2402 + k MHz, k = 0..78 (Bluetooth Core Specification 5.4, Vol 2, Part A, section 2).
    /// </summary>
    public static Band Bluetooth { get; } = new(Enumerable.Range(0, 79).Select(k => Frequency.FromMegahertz(2402 + k)));

    /// <summary>The channel centres, lowest first.</summary>
    public IReadOnlyList<Frequency> Channels => channels;

    /// <summary>
    /// The one frequency whose free-space loss equals the mean over the channels. Received power goes with 1/f², so it is
    /// the inverse root of the mean of 1/f².
    /// </summary>
    public Frequency Equivalent { get; }

    private static Frequency EquivalentOf(Frequency[] channels)
    {
        double mean = channels.Average(f => 1 / (f.Megahertz * f.Megahertz));
        return Frequency.FromMegahertz(1 / Math.Sqrt(mean));
    }
}
