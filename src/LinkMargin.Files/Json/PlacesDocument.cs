namespace LinkMargin.Files.Json;

/// <summary>The best places for a console, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Occupied">Seats with people who stand in the way.</param>
/// <param name="LookedAt">How many places there were.</param>
/// <param name="Computed">How many of them were worked out forwards, as a spot is.</param>
/// <param name="Places">The best, distinct, best first.</param>
/// <param name="BestSpot">The best spot that the house file names; left out where it names none.</param>
/// <param name="Picture">The map of the choice.</param>
public sealed record PlacesDocument(
    string House,
    IReadOnlyList<string> Occupied,
    int LookedAt,
    int Computed,
    IReadOnlyList<PlaceDocument> Places,
    RankDocument? BestSpot,
    string Picture)
{
    /// <summary>How often a margin told here is exceeded, 0 to 1.</summary>
    public required double Confidence { get; init; }

    /// <summary>What is different from the house file; left out where nothing is.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>How many readings the losses were fitted to; left out where they are the tables'.</summary>
    public int? FittedToMeasurements { get; init; }
}
