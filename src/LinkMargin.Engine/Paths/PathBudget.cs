using LinkMargin.Engine.Materials;

namespace LinkMargin.Engine.Paths;

/// <summary>One path of a link, itemised. The parts add up to <see cref="LossDb"/>.</summary>
/// <param name="Path">The path.</param>
/// <param name="FreeSpaceDb">Free-space loss over its length, mean over the band, dB; 0 for the diffuse field.</param>
/// <param name="CrossingsDb">Loss of each of the path's crossings, in their order, dB.</param>
/// <param name="LossDb">The total, dB.</param>
public sealed record PathBudget(TracedPath Path, double FreeSpaceDb, IReadOnlyList<double> CrossingsDb, double LossDb)
{
    /// <summary>
    /// Diffraction at obstacles on or near the line, dB: below 0 where energy passes beside them (through a door close by, past
    /// the end of a wall), above 0 where an obstacle that the line just misses causes a loss.
    /// </summary>
    public double EdgesDb { get; init; }

    /// <summary>Loss at the reflection, dB; 0 for a path without one.</summary>
    public double ReflectionDb { get; init; }

    /// <summary>Loss by diffraction at edges, dB; 0 for a path without any.</summary>
    public double DiffractionDb { get; init; }

    /// <summary>
    /// Loss by interference where the straight line runs along a surface, dB, in the direct path and in the reflection there; below 0
    /// where it helps.
    /// </summary>
    public double SurfacesDb { get; init; }

    /// <summary>Loss by the player's own body, dB.</summary>
    public double BodyDb { get; init; }

    /// <summary>From the console's power to that received from the diffuse field at the player, dB; 0 for a path made of straight lines.</summary>
    public double DiffuseDb { get; init; }

    /// <summary>Where it leaves a straight line, in order from the spot; empty for the straight line and the diffuse field.</summary>
    public IReadOnlyList<PathTurn> Turns { get; init; } = [];

    /// <summary>One sentence for each formula that is used outside the range it was published for; mostly none.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Where the loss of each of the path's crossings comes from, in their order.</summary>
    public required IReadOnlyList<LossBasis> Bases { get; init; }
}
