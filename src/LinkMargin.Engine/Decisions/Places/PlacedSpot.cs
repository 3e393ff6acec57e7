namespace LinkMargin.Engine.Decisions.Places;

/// <summary>A place for a console, worked out forwards as a spot of its own.</summary>
/// <param name="Place">The place.</param>
/// <param name="Score">How it serves the seats.</param>
public sealed record PlacedSpot(Standing Place, SpotScore Score);
