namespace LinkMargin.Files.Json;

/// <summary>The maps one command made, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Occupied">Seats with people who stand in the way.</param>
/// <param name="CellM">Side of a cell, metres.</param>
/// <param name="HandsM">Height of the hands above the floor, metres.</param>
/// <param name="RequiredDb">The margin of the heaviest line, dB.</param>
/// <param name="Maps">The maps.</param>
/// <param name="Sheet">The picture with all of them; left out where there is one map.</param>
public sealed record MapsDocument(
    string House,
    IReadOnlyList<string> Occupied,
    double CellM,
    double HandsM,
    double RequiredDb,
    IReadOnlyList<MapDocument> Maps,
    string? Sheet)
{
    /// <summary>How often there is the margin to count on, 0 to 1.</summary>
    public double Confidence { get; init; }

    /// <summary>What is different from the house file; left out where nothing is.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>How many readings the losses were fitted to; left out where they are the tables'.</summary>
    public int? FittedToMeasurements { get; init; }
}
