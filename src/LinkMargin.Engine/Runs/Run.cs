using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Runs;

/// <summary>What a run carries a picture from and to.</summary>
/// <param name="From">The end at the source.</param>
/// <param name="To">The other end.</param>
/// <param name="Signal">The most demanding picture that it must carry.</param>
/// <param name="Limits">Devices and displays at its ends whose rate is limited.</param>
public sealed record Connection(CablePlace From, CablePlace To, PictureSignal Signal, IReadOnlyList<RateLimit> Limits)
{
    /// <summary>What its source is called; a splitter may stand in another place than its own.</summary>
    public string FromName { get; init; } = From.Name;

    /// <summary>What its other end is called.</summary>
    public string ToName { get; init; } = To.Name;
}

/// <summary>The rate that something passes or takes.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Gbps">The rate, Gbit/s; null where it is not stated.</param>
public sealed record RateLimit(string Name, double? Gbps);

/// <summary>How a connection is made.</summary>
public enum RunMeans
{
    /// <summary>By a cable that is pulled already.</summary>
    Existing,

    /// <summary>By a short lead: its ends are side by side.</summary>
    Patch,

    /// <summary>By a new cable.</summary>
    New,
}

/// <summary>What a run still lacks.</summary>
public enum RunGap
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>No route leads from end to end.</summary>
    Route,

    /// <summary>No kind of cable in the table carries the rate over the length.</summary>
    Kind,

    /// <summary>No link in use runs at the rate.</summary>
    Rate,
}

/// <summary>One cable from one place to another.</summary>
/// <param name="Connection">What it connects.</param>
/// <param name="Means">How.</param>
public sealed record Run(Connection Connection, RunMeans Means)
{
    /// <summary>Slack at an end in or beside a rack, metres (common practice).</summary>
    public const double RackSlackMetres = 3;

    /// <summary>Slack at any other end, metres (common practice: 0.3 to 1 m).</summary>
    public const double EndSlackMetres = 1;

    /// <summary>The cable that is pulled already; null for others.</summary>
    public PulledCable? Existing { get; init; }

    /// <summary>Cables between the same ends that point the wrong way.</summary>
    public IReadOnlyList<PulledCable> WrongWay { get; init; } = [];

    /// <summary>Cables between the same ends that do not carry the picture.</summary>
    public IReadOnlyList<PulledCable> TooSlow { get; init; } = [];

    /// <summary>Where a new cable lies; null for others, and where there is no route.</summary>
    public Route? Route { get; init; }

    /// <summary>Slack at both ends, metres.</summary>
    public double SlackMetres { get; init; }

    /// <summary>What kind of cable to buy; null for an existing one, and where none will do.</summary>
    public CableKind? Kind { get; init; }

    /// <summary>The length to buy, metres; 0 for an existing one.</summary>
    public double BuyMetres { get; init; }

    /// <summary>Length along its route with slack, metres.</summary>
    public double NeededMetres { get; init; }

    /// <summary>What is left over, to be coiled up, metres.</summary>
    public double CoilMetres => Math.Max(0, BuyMetres - NeededMetres);

    /// <summary>The rate of the link that the picture needs, Gbit/s; null if none is fast enough.</summary>
    public double? NeededGbps => LinkRates.NeededGbps(Connection.Signal);

    /// <summary>Whether the cable carries the rate over its length.</summary>
    public Carries ByCable { get; init; }

    /// <summary>The highest rate that the cable may carry over its length, Gbit/s; null where there is no cable.</summary>
    public double? CableGbps { get; init; }

    /// <summary>Whether the picture's total bit rate stays below that rate.</summary>
    public Carries BySum => CableGbps is { } rate ? LinkRates.Of(Connection.Signal, rate) : Carries.No;

    /// <summary>Whether a device or display at an end passes or takes the picture; if its rate is not stated, it counts as if it did.</summary>
    public Carries By(RateLimit limit) => limit?.Gbps is { } gbps ? LinkRates.Of(Connection.Signal, gbps) : Carries.Yes;

    /// <summary>The worst of cable, bit rate and ends.</summary>
    public Carries Carries => Connection.Limits.Select(By).Append(ByCable).Append(BySum).Max();

    /// <summary>What it lacks.</summary>
    public RunGap Gap { get; init; }
}

/// <summary>A lead for a receiver, or for a controller on a wire.</summary>
/// <param name="From">At the console.</param>
/// <param name="To">Where the receiver or the player is.</param>
/// <param name="Route">Where it lies; null if there is no route.</param>
/// <param name="NeededMetres">Length along its route with slack, metres.</param>
/// <param name="Kind">What to buy; null if no kind in the table is long enough.</param>
/// <param name="Carries">Whether it works over the length.</param>
public sealed record LeadRun(CablePlace From, CablePlace To, Route? Route, double NeededMetres, CableKind? Kind, Carries Carries);
