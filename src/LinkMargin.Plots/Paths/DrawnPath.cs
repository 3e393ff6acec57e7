namespace LinkMargin.Plots.Paths;

/// <summary>A path with the line it is drawn on.</summary>
/// <param name="Entry">The path.</param>
/// <param name="Track">Where it is drawn.</param>
internal sealed record DrawnPath(PathEntry Entry, PathTrack Track);
