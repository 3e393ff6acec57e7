using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Paths.Body;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths;

/// <summary>One kind of path in one house, with everything that does not depend on where a link starts.</summary>
internal interface IPathSource
{
    /// <summary>Prepares what all links from one place share.</summary>
    internal PathFinder From(Point3 start);
}

/// <summary>Finds the paths of one kind from one place. Never changes; threads use it with buffers of their own.</summary>
internal abstract class PathFinder
{
    /// <summary>
    /// A path of an optional kind that adds less than this share of the power of the kinds that always count, 0.02 dB, is dropped.
    /// Up to twice as much it fades in, so that dropping it causes no jump.
    /// </summary>
    internal const double LeastShare = 0.005;

    /// <summary>Whether its power always counts and sets the least power of the optional kinds, which come later.</summary>
    internal virtual bool AlwaysCounts => false;

    /// <summary>Whether its power varies slowly from place to place within a room, without the steep edges of shadows on the straight line.</summary>
    internal virtual bool VariesSlowly => false;

    /// <summary>Whether it takes much less time than the others that always count.</summary>
    internal virtual bool IsQuick => false;

    /// <summary>Finds the paths of a link, always in the same order.</summary>
    /// <param name="ends">The link.</param>
    /// <param name="leastPower">Power at or below which a path is dropped; 0 for a kind that always counts.</param>
    /// <param name="buffer">The thread's own. While a path is added, it holds the pieces of the path's front.</param>
    /// <param name="found">Receives the paths.</param>
    internal abstract void FindTo(in LinkEnds ends, double leastPower, TraceBuffer buffer, ref FoundPaths found);

    /// <summary>How much of an optional path's power counts.</summary>
    internal static double Counted(double power, double leastPower) =>
        power <= leastPower ? 0 : power >= 2 * leastPower ? power : power * ((power / leastPower) - 1);
}

/// <summary>A path that a finder has found.</summary>
internal interface IFoundPath
{
    /// <summary>Power that arrives by it, share of the power transmitted between isotropic antennas of one polarisation.</summary>
    internal double Power { get; }

    /// <summary>Its budget, item by item.</summary>
    internal PathBudget Itemise(in LinkEnds ends, TraceBuffer buffer);

    /// <summary>Adds how its loss changes with the loss of each material.</summary>
    internal void AddGradients(in LinkEnds ends, TraceBuffer buffer, LossGradients gradients);
}

/// <summary>Receives the paths of one link: adds up their powers and passes each on where more is wanted.</summary>
/// <param name="each">What else to do with each path; null where only the power is wanted.</param>
/// <param name="power">The power known already, share of the transmitted power.</param>
internal struct FoundPaths(Action<IFoundPath>? each, double power = 0)
{
    /// <summary>The sum so far, share of the power transmitted between isotropic antennas.</summary>
    internal double Power { get; private set; } = power;

    /// <summary>Whether only the power is wanted.</summary>
    internal readonly bool IsSumOnly => each is null;

    /// <summary>The power at which the search may stop.</summary>
    internal double Enough { get; init; } = double.PositiveInfinity;

    /// <summary>Adds the power of a path that is not passed on.</summary>
    internal void Add(double power) => Power += power;

    /// <summary>The only mirrors to try, by number; null for all.</summary>
    internal int[]? OnlyMirrors { get; init; }

    /// <summary>Receives the numbers of the mirrors whose reflections count; null where they are not needed.</summary>
    internal List<int>? CountingMirrors { get; init; }

    /// <summary>Adds a path.</summary>
    internal void Add<TPath>(in TPath path)
        where TPath : struct, IFoundPath
    {
        Power += path.Power;
        each?.Invoke(path);
    }
}

/// <summary>The two ends of a link.</summary>
/// <param name="Start">Where its paths start.</param>
/// <param name="End">Where they end.</param>
/// <param name="FacingDegrees">Where the player looks; null for the mean over all directions.</param>
/// <param name="IsPlayerAtStart">Whether the player sits at the start, for links that are computed backwards.</param>
internal readonly record struct LinkEnds(Point3 Start, Point3 End, double? FacingDegrees, bool IsPlayerAtStart)
{
    /// <summary>Whether many links have the same player's end: for those computed backwards, and where a console is tried in many places.</summary>
    internal bool IsPlayerShared { get; init; }

    /// <summary>Straight distance, metres.</summary>
    internal double DistanceMetres => Start.DistanceTo(End);

    /// <summary>Share of a path's power that the player's own body leaves.</summary>
    /// <param name="body">The body.</param>
    /// <param name="first">Where the path's first leg goes, unfolded.</param>
    /// <param name="last">Where its last leg comes from, unfolded.</param>
    internal double BodyFactor(BodyShadow body, Point3 first, Point3 last) =>
        IsPlayerAtStart ? body.Factor(first, Start, FacingDegrees) : body.Factor(last, End, FacingDegrees);
}

/// <summary>A house ready for tracing, with what every kind of path needs.</summary>
/// <param name="Scene">The house, laid out for tracing.</param>
/// <param name="Losses">What its materials lose at every angle.</param>
/// <param name="Body">What the player's body leaves of a path.</param>
internal sealed record TracedHouse(Scene Scene, LossTables Losses, BodyShadow Body)
{
    /// <summary>Wavelength of the frequency that stands for the band, metres.</summary>
    internal double WavelengthMetres { get; } = Scene.Band.Equivalent.WavelengthMetres;

    /// <summary>Where links have their ends.</summary>
    internal Standoff Standoff { get; } = new(Scene);

    /// <summary>Power that arrives over a length of free space, share of the power transmitted between isotropic antennas.</summary>
    internal double FreeSpaceRatio(double lengthMetres) => FreeSpaceLoss.PowerRatio(lengthMetres, WavelengthMetres);
}
