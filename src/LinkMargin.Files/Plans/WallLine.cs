namespace LinkMargin.Files.Plans;

/// <summary>The one line that the faces of a wall, and of walls that continue it, are laid on.</summary>
/// <param name="Members">Positions of the edges among the level's edges.</param>
/// <param name="Line">A stretch of the line.</param>
internal sealed record WallLine(IReadOnlyList<int> Members, Segment Line);
