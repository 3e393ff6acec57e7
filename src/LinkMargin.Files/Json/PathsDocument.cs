namespace LinkMargin.Files.Json;

/// <summary>The picture of one link's paths, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Spot">The spot's name.</param>
/// <param name="Seat">The seat's name.</param>
/// <param name="Occupied">Other seats with people who stand in the way.</param>
/// <param name="Picture">The picture.</param>
/// <param name="PathsDrawn">How many paths it shows, the strongest.</param>
/// <param name="PathsLeftOut">How many weaker ones it leaves out.</param>
/// <param name="ShareLeftOut">Their share of the power that arrives, 0 to 1.</param>
public sealed record PathsDocument(
    string House,
    string Spot,
    string Seat,
    IReadOnlyList<string> Occupied,
    string Picture,
    int PathsDrawn,
    int PathsLeftOut,
    double ShareLeftOut)
{
    /// <summary>The median margin of the link, dB.</summary>
    public required double MedianDb { get; init; }

    /// <summary>The margin to count on, dB.</summary>
    public required double MarginAtConfidenceDb { get; init; }

    /// <summary>How often there is at least so much, 0 to 1.</summary>
    public required double Confidence { get; init; }

    /// <summary>What the seat requires, dB.</summary>
    public required double RequiredDb { get; init; }

    /// <summary>Whether the margin to count on is at least that.</summary>
    public required bool Meets { get; init; }

    /// <summary>What is different from the house file; left out where nothing is.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>How many readings the losses were fitted to; left out where they are the tables'.</summary>
    public int? FittedToMeasurements { get; init; }
}
