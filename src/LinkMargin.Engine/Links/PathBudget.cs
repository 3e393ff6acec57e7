namespace LinkMargin.Engine.Links;

/// <summary>One path of a link, itemised.</summary>
/// <param name="Path">The path.</param>
/// <param name="FreeSpaceDb">Free-space loss over its length, mean over the band, dB.</param>
/// <param name="CrossingsDb">Loss of each of the path's crossings, in their order, dB.</param>
/// <param name="LossDb">All together, dB.</param>
public sealed record PathBudget(Path Path, double FreeSpaceDb, IReadOnlyList<double> CrossingsDb, double LossDb);
