using System.Text.Json.Serialization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Files.Json;

/// <summary>The measurements that would reduce the uncertainty of the decision most, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="MeasurementsSoFar">How many measurements the losses were fitted to; 0 for table losses.</param>
/// <param name="Measurements">The measurements to take, in this order.</param>
/// <param name="Picture">The plan they are drawn on; omitted if none was written.</param>
public sealed record NextMeasurementsDocument(
    string House, int MeasurementsSoFar, IReadOnlyList<NextMeasurementDocument> Measurements, string? Picture)
{
    /// <summary>What differs from the house file; omitted if nothing does.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }
}

/// <summary>A recommended measurement, as JSON.</summary>
/// <param name="Transmitter">The spot to send from.</param>
/// <param name="Level">The level to stand on.</param>
/// <param name="Where">The seat to stand at, or the room.</param>
/// <param name="XM">Metres east.</param>
/// <param name="YM">Metres north.</param>
/// <param name="HeightM">Height of the device above the floor, metres.</param>
/// <param name="UncertaintyLeft">Share of the uncertainty that remains after this measurement and those before it, 0 to 1.</param>
public sealed record NextMeasurementDocument(
    string Transmitter,
    string Level,
    string Where,
    [property: JsonPropertyName("xM")] double XM,
    [property: JsonPropertyName("yM")] double YM,
    double HeightM,
    double UncertaintyLeft)
{
    /// <summary>A measurement as a document.</summary>
    public static NextMeasurementDocument Of(House house, NextMeasurement next)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(next);
        return new(
            next.Transmitter.Name, house.Levels[next.LevelIndex].Name, next.Where, next.Plan.X, next.Plan.Y, next.HeightMetres, next.UncertaintyLeft);
    }
}
