namespace LinkMargin.Engine.Cables;

/// <summary>What a cable is for.</summary>
public enum CableUse
{
    /// <summary>A picture with its sound.</summary>
    Picture,

    /// <summary>A receiver, or a controller on a wire.</summary>
    Lead,

    /// <summary>Anything else that may be in a passage already.</summary>
    Other,
}

/// <summary>How long a cable may be at a rate.</summary>
/// <param name="Gbps">Raw rate of the link, Gbit/s; 0 where the kind has no rate.</param>
/// <param name="SureMetres">Up to this length it normally works, metres.</param>
/// <param name="MostMetres">Up to this length it may work, metres; never below <paramref name="SureMetres"/>.</param>
public sealed record Reach(double Gbps, double SureMetres, double MostMetres);

/// <summary>One kind of cable, a row of the table of cables: a class, not a make.</summary>
/// <param name="Name">The word used in house files, such as <c>hdmi-optical</c>.</param>
/// <param name="Use">What it is for.</param>
/// <param name="DiameterMetres">Outer diameter, metres.</param>
/// <param name="BendRadiusMetres">Smallest radius it may lie in, metres.</param>
/// <param name="IsDirectional">Whether one end is the source's, so that it cannot be turned once it is pulled.</param>
/// <param name="Plug">What must pass each hole: width and height of the end, metres.</param>
/// <param name="Source">Where the figures are from.</param>
public sealed record CableKind(
    string Name,
    CableUse Use,
    double DiameterMetres,
    double BendRadiusMetres,
    bool IsDirectional,
    PlugSize Plug,
    string Source)
{
    /// <summary>What it is, in words an installer would use.</summary>
    public string Description { get; init; } = "";

    /// <summary>How long it may be, by rate, lowest rate first.</summary>
    public IReadOnlyList<Reach> Reaches { get; init; } = [];

    /// <summary>Lengths it is sold in, shortest first; empty where it is cut to length.</summary>
    public IReadOnlyList<StockLength> Stock { get; init; } = [];

    /// <summary>Greatest pulling force, newtons; null where not known.</summary>
    public double? PullNewtons { get; init; }

    /// <summary>How long a cable may be at a rate: the entry of the lowest rate at or above it; null if there is none.</summary>
    public Reach? ReachAt(double gbps) => Reaches.FirstOrDefault(reach => reach.Gbps >= gbps);

    /// <summary>Whether a cable of a length carries a rate.</summary>
    public Carries Carries(double gbps, double lengthMetres) => ReachAt(gbps) is not { } reach ? Cables.Carries.No
        : lengthMetres <= reach.SureMetres + LengthSlackMetres ? Cables.Carries.Yes
        : lengthMetres <= reach.MostMetres + LengthSlackMetres ? Cables.Carries.Borderline
        : Cables.Carries.No;

    /// <summary>The highest rate that a cable of a length may carry, Gbit/s; null if it is too long for any.</summary>
    public double? FastestGbps(double lengthMetres) =>
        Reaches.Where(reach => lengthMetres <= reach.MostMetres + LengthSlackMetres).Select(reach => (double?)reach.Gbps).Max();

    /// <summary>The next length it is sold in; the length itself where it is cut to length; null where none is long enough.</summary>
    public double? StockFor(double neededMetres) => Stock.Count == 0
        ? neededMetres
        : Stock.FirstOrDefault(stock => stock.Metres >= neededMetres - LengthSlackMetres)?.Metres;

    // Lengths in feet are not round in metres.
    private const double LengthSlackMetres = 1e-6;
}

/// <summary>A length that a cable is sold in.</summary>
/// <param name="Metres">The length, metres.</param>
/// <param name="AsSold">As it is written on the packet, such as <c>50 ft</c>.</param>
public sealed record StockLength(double Metres, string AsSold);

/// <summary>The end of a cable as it must pass a hole.</summary>
/// <param name="WidthMetres">Its width, metres.</param>
/// <param name="HeightMetres">Its height, metres.</param>
public readonly record struct PlugSize(double WidthMetres, double HeightMetres)
{
    /// <summary>The smallest round hole it passes, metres.</summary>
    public double DiagonalMetres => double.Hypot(WidthMetres, HeightMetres);
}
