using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links.Stored;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Links;

/// <summary>Everything about one spot that its links share. Never changes; threads trace in it with buffers of their own.</summary>
internal abstract class SpotModel
{
    protected SpotModel(Scene scene, Spot spot)
    {
        Scene = scene;
        Spot = spot;
        Console = scene.House.PositionOf(spot);
    }

    /// <summary>
    /// The greatest path loss that either model reports, dB; what loses more reports this. It is some 100 dB beyond what any radio
    /// hears, so no decision depends on it.
    /// </summary>
    internal const double GreatestLossDb = LayeredSlab.GreatestLossDb;

    /// <summary>A path loss as it is reported, dB.</summary>
    internal static double Reported(double lossDb) => Math.Min(GreatestLossDb, lossDb);

    /// <summary>A power, as a share of what is sent, as the loss that is reported, dB.</summary>
    internal static double ToLossDb(double powerRatio) => Reported(Decibels.LossFromPowerRatio(Math.Max(powerRatio, double.Epsilon)));

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

    /// <summary>The same, made ready for hundreds of places.</summary>
    internal virtual SpotModel ForMany() => this;

    /// <summary>The same sum with its parts, strongest path first.</summary>
    internal abstract IReadOnlyList<PathBudget> Paths(Point3 hands, double? facingDegrees);

    /// <summary>The paths, with how each changes with the house's losses.</summary>
    internal abstract StoredLink Store(Point3 hands, double? facingDegrees, GradientRecorder book);
}
