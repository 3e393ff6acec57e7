namespace LinkMargin.Files.Json;

/// <summary>The readings that would most reduce the doubt about the decision, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="MeasurementsSoFar">How many readings the losses were fitted to; 0 where they are the tables'.</param>
/// <param name="Measurements">The readings to take, in this order.</param>
/// <param name="Picture">The plan they are drawn on; left out where none was written.</param>
public sealed record NextMeasurementsDocument(
    string House, int MeasurementsSoFar, IReadOnlyList<NextMeasurementDocument> Measurements, string? Picture)
{
    /// <summary>What is different from the house file; left out where nothing is.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }
}
