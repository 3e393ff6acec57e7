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
    /// <param name="enoughDb">Once the loss is certain to be less than this, any lesser value may be returned.</param>
    internal abstract double PathLossDb(
        Point3 hands, double? facingDegrees, TraceBuffer buffer, double enoughDb = double.NegativeInfinity);

    /// <summary>A quick upper bound of that, dB: the loss of the paths that always count.</summary>
    internal abstract double GreatestPathLossDb(Point3 hands, double? facingDegrees, TraceBuffer buffer);

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
    internal abstract void Record(Point3 hands, double? facingDegrees, IGradientRecorder recorder);
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
