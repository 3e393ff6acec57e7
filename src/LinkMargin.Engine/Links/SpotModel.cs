using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Links;

/// <summary>Everything about one spot that its links share. It never changes; each thread traces in it with a buffer of its own.</summary>
internal abstract class SpotModel
{
    protected SpotModel(Scene scene, Spot spot)
    {
        Scene = scene;
        Spot = spot;
        Console = scene.House.PositionOf(spot);
    }

    /// <summary>The house.</summary>
    internal Scene Scene { get; }

    /// <summary>The spot.</summary>
    internal Spot Spot { get; }

    /// <summary>Where the console is.</summary>
    internal Point3 Console { get; }

    /// <summary>Path loss to a place, by the sum of the paths' powers, dB.</summary>
    /// <param name="hands">The place.</param>
    /// <param name="facingDegrees">Where the player looks; null for the mean over all directions.</param>
    /// <param name="buffer">The thread's own.</param>
    internal abstract double PathLossDb(Point3 hands, double? facingDegrees, TraceBuffer buffer);

    /// <summary>A quick upper bound of that, dB: the loss of the diffuse field alone; infinite where nothing is quicker than the loss itself.</summary>
    internal abstract double QuickPathLossDb(Point3 hands, double? facingDegrees, LinkTrace trace);

    /// <summary>Begins a link with the paths that always count; <see cref="FinishDb"/> adds the others.</summary>
    /// <param name="hands">The place.</param>
    /// <param name="facingDegrees">Where the player looks; null for the mean over all directions.</param>
    /// <param name="trace">Room for the link, until it is finished.</param>
    internal abstract BegunLink Begin(Point3 hands, double? facingDegrees, LinkTrace trace);

    /// <summary>Path loss of a link that was begun, dB: the same as <see cref="PathLossDb"/>, to the last bit.</summary>
    /// <param name="begun">The link.</param>
    /// <param name="enoughDb">Once the loss is certain to be less than this, any lesser value may be returned.</param>
    /// <param name="trace">The room it was begun in.</param>
    internal abstract double FinishDb(in BegunLink begun, double enoughDb, LinkTrace trace);

    /// <summary>Whether some of its paths vary slowly from place to place, so that a field may interpolate them between cells.</summary>
    internal virtual bool HasSlowPaths => false;

    /// <summary>
    /// Power to a place by all paths but the slow ones, as the mean over all directions in which the player may look. The buffer then holds
    /// the surfaces along the straight line.
    /// </summary>
    internal virtual PowerParts PartsWithoutSlow(Point3 hands, TraceBuffer buffer) => throw new NotSupportedException();

    /// <summary>
    /// Power to a place by the slow paths. With all mirrors and <see cref="PathFinder.LeastShare"/> <see cref="PowerParts.With"/> then gives the
    /// same as <see cref="PathLossDb"/>, to the last bit.
    /// </summary>
    /// <param name="hands">The place.</param>
    /// <param name="leastPower">Power at or below which a path is dropped.</param>
    /// <param name="onlyMirrors">The only mirrors to try, by number; null for all.</param>
    /// <param name="counting">Receives the numbers of the mirrors that count; null where they are not needed.</param>
    /// <param name="buffer">The thread's own, with the surfaces along the straight line.</param>
    internal virtual double SlowPower(
        Point3 hands, double leastPower, int[]? onlyMirrors, List<int>? counting, TraceBuffer buffer) => throw new NotSupportedException();

    /// <summary>The same, prepared for hundreds of places.</summary>
    internal virtual SpotModel ForMany() => this;

    /// <summary>The same sum with its parts, strongest path first.</summary>
    internal abstract IReadOnlyList<PathBudget> Paths(Point3 hands, double? facingDegrees);

    /// <summary>Records each path's power, with how its loss changes with the house's losses.</summary>
    /// <param name="hands">The place.</param>
    /// <param name="facingDegrees">Where the player looks; null for the mean over all directions.</param>
    /// <param name="isSeatShared">Whether links from many spots end there, so that what they share is worth keeping.</param>
    /// <param name="recorder">Receives the paths.</param>
    internal abstract void Record(Point3 hands, double? facingDegrees, bool isSeatShared, IGradientRecorder recorder);
}

/// <summary>Power that arrives at a place without the slow paths, shares of the transmitted power.</summary>
/// <param name="Always">By the paths that always count.</param>
/// <param name="Optional">By the others.</param>
internal readonly record struct PowerParts(double Always, double Optional)
{
    /// <summary>The sum.</summary>
    internal double Sum => Always + Optional;

    /// <summary>The sum with the slow paths, in the order of <see cref="PathSources"/>.</summary>
    internal double With(double slow) => Always + slow + Optional;
}

/// <summary>A link whose direct path and diffuse field are known.</summary>
/// <param name="Ends">Its ends.</param>
/// <param name="Power">Power by these paths, share of the transmitted power.</param>
/// <param name="GreatestPathLossDb">Path loss by these paths alone, dB: the others can only lessen it.</param>
internal readonly record struct BegunLink(LinkEnds Ends, double Power, double GreatestPathLossDb);

/// <summary>Room for one link after the other from one spot to places near each other, for one thread.</summary>
internal sealed class LinkTrace
{
    /// <summary>What the link crosses.</summary>
    internal TraceBuffer Buffer { get; } = new();

    /// <summary>The mirrors that counted last, by number: tried first where it may be that little is needed. What they are changes no loss.</summary>
    internal int[] LikelyMirrors { get; set; } = [];
}
