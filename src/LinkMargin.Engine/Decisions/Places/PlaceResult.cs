namespace LinkMargin.Engine.Decisions.Places;

/// <summary>What a search for places gave.</summary>
/// <param name="Best">The best places, distinct, best first; empty where a console may stand nowhere.</param>
/// <param name="LookedAt">How many places there were.</param>
/// <param name="WorkedOut">How many of them were worked out forwards.</param>
public sealed record PlaceResult(IReadOnlyList<PlacedSpot> Best, int LookedAt, int WorkedOut);
