namespace LinkMargin.Engine.Cables;

/// <summary>Whether a cable or a link carries what is required. The larger the value, the worse.</summary>
public enum Carries
{
    /// <summary>It does.</summary>
    Yes,

    /// <summary>At the limit: it may.</summary>
    Borderline,

    /// <summary>It does not.</summary>
    No,
}

/// <summary>The raw rates that picture links run at.</summary>
public static class LinkRates
{
    /// <summary>
    /// How far a rate computed with full blanking may exceed a link's rate and still be worth a try. Blanking is sent compressed, so a
    /// 4K picture of 12 bits 120 times a second runs on a link of 48 Gbit/s though the sum is 48.11 (common practice).
    /// </summary>
    public const double BorderlineShare = 0.005;

    /// <summary>Raw rates in use, Gbit/s: first that of three lanes and a clock, then the fixed rates.</summary>
    public static IReadOnlyList<double> Gbps { get; } = [PictureSignal.ClockedLinkGbps, 24, 32, 40, 48];

    /// <summary>The smallest rate that carries a signal, borderline or not; null if none does.</summary>
    public static double? NeededGbps(PictureSignal signal)
    {
        ArgumentNullException.ThrowIfNull(signal);
        return Gbps.Where(rate => signal.IsClocked || rate > PictureSignal.ClockedLinkGbps)
            .Where(rate => Of(signal, rate) != Carries.No)
            .Select(rate => (double?)rate)
            .FirstOrDefault();
    }

    /// <summary>Whether a link of a raw rate carries a signal.</summary>
    public static Carries Of(PictureSignal signal, double linkGbps)
    {
        ArgumentNullException.ThrowIfNull(signal);
        return signal.LineGbps <= linkGbps ? Carries.Yes
            : signal.LineGbps <= linkGbps * (1 + BorderlineShare) ? Carries.Borderline
            : Carries.No;
    }
}
