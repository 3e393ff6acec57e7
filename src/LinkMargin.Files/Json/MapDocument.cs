using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Json;

/// <summary>One map, as JSON.</summary>
/// <param name="Spot">The spot's name.</param>
/// <param name="Level">The level the hands are on.</param>
/// <param name="Picture">The picture.</param>
/// <param name="Csv">The numbers as CSV; left out where not asked for.</param>
/// <param name="Geojson">The numbers as GeoJSON; left out where not asked for.</param>
/// <param name="Cells">How many cells were computed.</param>
/// <param name="LeastDb">The smallest margin to count on, dB; left out where no cell was computed.</param>
/// <param name="GreatestDb">The largest margin to count on, dB; left out where no cell was computed.</param>
/// <param name="SharePassing">The share of the cells that can count on the required margin; left out where no cell was computed.</param>
public sealed record MapDocument(
    string Spot,
    string Level,
    string Picture,
    string? Csv,
    string? Geojson,
    int Cells,
    double? LeastDb,
    double? GreatestDb,
    double? SharePassing)
{
    /// <summary>The share of the cells whose median is at least the required margin; left out where no cell was computed.</summary>
    public double? MedianSharePassing { get; init; }

    /// <summary>A map as JSON says it.</summary>
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
