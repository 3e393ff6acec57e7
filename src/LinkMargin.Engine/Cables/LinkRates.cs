namespace LinkMargin.Engine.Cables;

/// <summary>Whether something carries what is asked of it. The larger the value, the worse.</summary>
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
    /// How far a sum with full blanking may be above a link's rate and still be worth a try. Blanking travels packed, so that 12 bits of
    /// a 4K picture 120 times a second run on a link of 48 Gbit/s though the sum says 48.11 (common practice).
    /// </summary>
    public const double BorderlineShare = 0.005;

    /// <summary>Raw rates in use, Gbit/s: three lanes and a clock first, then those of fixed rate.</summary>
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
