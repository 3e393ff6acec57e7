using LinkMargin.Engine.Materials;

namespace LinkMargin.Engine.Paths;

/// <summary>One path of a link, itemised. The parts add up to <see cref="LossDb"/>.</summary>
/// <param name="Path">The path.</param>
/// <param name="FreeSpaceDb">Free-space loss over its length, mean over the band, dB; 0 for the diffuse field.</param>
/// <param name="CrossingsDb">Loss of each of the path's crossings, in their order, dB.</param>
/// <param name="LossDb">All together, dB.</param>
public sealed record PathBudget(TracedPath Path, double FreeSpaceDb, IReadOnlyList<double> CrossingsDb, double LossDb)
{
    /// <summary>
    /// What passes beside the obstacles on or near the line, dB: below 0 where it helps (through a door close by, round the
    /// end of a wall), above 0 where an obstacle that the line just misses takes something.
    /// </summary>
    public double EdgesDb { get; init; }

    /// <summary>What a mirror does not reflect, dB; 0 for a path without one.</summary>
    public double ReflectionDb { get; init; }

    /// <summary>What bending round edges costs, dB; 0 for a path that does not.</summary>
    public double DiffractionDb { get; init; }

    /// <summary>
    /// What interference takes where the straight line runs along a surface, dB, from the direct path and from the reflection there;
    /// below 0 where it helps.
    /// </summary>
    public double SurfacesDb { get; init; }

    /// <summary>What the player's own body takes, dB.</summary>
    public double BodyDb { get; init; }

    /// <summary>From the console's power to that of an even field where the player sits, dB; 0 for a path that runs on lines.</summary>
    public double DiffuseDb { get; init; }

    /// <summary>Where it left its straight line, in order from the spot; empty for the straight line and the diffuse field.</summary>
    public IReadOnlyList<PathTurn> Turns { get; init; } = [];

    /// <summary>One sentence for each formula that is used outside the range it was published for; mostly none.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>How the loss of each of the path's crossings came about, in their order.</summary>
    public required IReadOnlyList<LossBasis> Bases { get; init; }
}
