using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Json;

/// <summary>The maps one command made, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Occupied">Seats with people who obstruct other links.</param>
/// <param name="CellM">Side of a cell, metres.</param>
/// <param name="HandsM">Height of the hands above the floor, metres.</param>
/// <param name="RequiredDb">The margin of the boldest contour line, dB.</param>
/// <param name="Maps">The maps.</param>
/// <param name="Sheet">The picture with all of them; omitted if there is only one map.</param>
public sealed record MapsDocument(
    string House,
    IReadOnlyList<string> Occupied,
    double CellM,
    double HandsM,
    double RequiredDb,
    IReadOnlyList<MapDocument> Maps,
    string? Sheet)
{
    /// <summary>Whether every cell was traced; otherwise figures are interpolated within rooms.</summary>
    public bool Exact { get; init; }

    /// <summary>Share of cases in which the margin to count on is reached, 0 to 1.</summary>
    public double Confidence { get; init; }

    /// <summary>What differs from the house file; omitted if nothing does.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>How many measurements the losses were fitted to; omitted for table losses.</summary>
    public int? FittedToMeasurements { get; init; }
}

/// <summary>One map, as JSON.</summary>
/// <param name="Spot">The spot's name.</param>
/// <param name="Level">The level the hands are on.</param>
/// <param name="Picture">The picture.</param>
/// <param name="Csv">The numbers as CSV; omitted if not requested.</param>
/// <param name="Geojson">The numbers as GeoJSON; omitted if not requested.</param>
/// <param name="Cells">How many cells were computed.</param>
/// <param name="LowestMarginAtConfidenceDb">The smallest margin to count on, dB; omitted if no cell was computed.</param>
/// <param name="HighestMarginAtConfidenceDb">The largest margin to count on, dB; omitted if no cell was computed.</param>
/// <param name="SharePassing">The share of cells whose margin to count on reaches the required margin; omitted if no cell was computed.</param>
public sealed record MapDocument(
    string Spot,
    string Level,
    string Picture,
    string? Csv,
    string? Geojson,
    int Cells,
    double? LowestMarginAtConfidenceDb,
    double? HighestMarginAtConfidenceDb,
    double? SharePassing)
{
    /// <summary>The share of cells whose median margin reaches the required margin; omitted if no cell was computed.</summary>
    public double? MedianSharePassing { get; init; }

    /// <summary>A map as a document.</summary>
    public static MapDocument Of(
        House house, Field field, FieldSummary? summary, FieldSummary? median, string picture, string? csv, string? geojson)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(field);
        return new(
            field.Spot.Name,
            house.Levels[field.LevelIndex].Name,
            picture,
            csv,
            geojson,
            summary?.Cells ?? 0,
            summary?.LeastDb,
            summary?.GreatestDb,
            summary?.SharePassing)
        {
            MedianSharePassing = median?.SharePassing,
        };
    }
}

/// <summary>The picture of one link's paths, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Spot">The spot's name.</param>
/// <param name="Seat">The seat's name.</param>
/// <param name="Occupied">Other seats with people who obstruct other links.</param>
/// <param name="Picture">The picture.</param>
/// <param name="PathsDrawn">How many paths it shows: the strongest ones.</param>
/// <param name="PathsNotDrawn">How many weaker paths it does not show.</param>
/// <param name="ShareNotDrawn">Their share of the received power, 0 to 1.</param>
public sealed record PathsDocument(
    string House,
    string Spot,
    string Seat,
    IReadOnlyList<string> Occupied,
    string Picture,
    int PathsDrawn,
    int PathsNotDrawn,
    double ShareNotDrawn)
{
    /// <summary>The median margin of the link, dB.</summary>
    public required double MedianDb { get; init; }

    /// <summary>The margin to count on, dB.</summary>
    public required double MarginAtConfidenceDb { get; init; }

    /// <summary>Share of cases in which the margin is at least this, 0 to 1.</summary>
    public required double Confidence { get; init; }

    /// <summary>What the seat requires, dB.</summary>
    public required double RequiredDb { get; init; }

    /// <summary>Whether the margin to count on reaches that.</summary>
    public required bool Passes { get; init; }

    /// <summary>What differs from the house file; omitted if nothing does.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>How many measurements the losses were fitted to; omitted for table losses.</summary>
    public int? FittedToMeasurements { get; init; }
}
