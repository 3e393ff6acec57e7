using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Json;

/// <summary>The tables in use, as JSON.</summary>
/// <param name="Files">Where they are from: materials, floors, radios, margins, spreads.</param>
/// <param name="Materials">Materials.</param>
/// <param name="Floors">Floor build-ups.</param>
/// <param name="Radios">Radios.</param>
/// <param name="Margins">What margins mean.</param>
/// <param name="Spreads">How far figures may be out, apart from the spread of each row.</param>
public sealed record TablesDocument(
    IReadOnlyList<string> Files,
    IReadOnlyList<MaterialDocument> Materials,
    IReadOnlyList<FloorDocument> Floors,
    IReadOnlyList<RadioDocument> Radios,
    IReadOnlyList<MarginDocument> Margins,
    IReadOnlyList<SpreadDocument> Spreads)
{
    /// <summary>Tables as JSON says them.</summary>
    public static TablesDocument Of(MaterialTables tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        return new(
            tables.Files is { } files ? [files.Materials, files.BuildUps, files.Radios, files.Margins, files.Spreads] : [],
            [.. tables.Materials.Values.Select(row => MaterialDocument.From(row, tables))],
            [.. tables.BuildUps.Values.Select(row => FloorDocument.From(row, tables))],
            [.. tables.Radios.Values.Select(row => RadioDocument.From(row, tables))],
            [.. tables.Margins.Select(MarginDocument.From)],
            [.. tables.SpreadRows.Select(SpreadDocument.From)]);
    }
}
