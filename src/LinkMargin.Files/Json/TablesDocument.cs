using LinkMargin.Engine.Houses;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Json;

/// <summary>The tables in use, as JSON.</summary>
/// <param name="Files">Where they come from: materials, floors, radios, margins, spreads.</param>
/// <param name="Materials">Materials.</param>
/// <param name="Floors">Floor build-ups.</param>
/// <param name="Radios">Radios.</param>
/// <param name="Margins">What margins mean in practice.</param>
/// <param name="Bands">What probabilities of passing mean in practice.</param>
/// <param name="Spreads">Uncertainties other than the spreads of single rows.</param>
public sealed record TablesDocument(
    IReadOnlyList<string> Files,
    IReadOnlyList<MaterialDocument> Materials,
    IReadOnlyList<FloorDocument> Floors,
    IReadOnlyList<RadioDocument> Radios,
    IReadOnlyList<MarginDocument> Margins,
    IReadOnlyList<BandDocument> Bands,
    IReadOnlyList<SpreadDocument> Spreads)
{
    /// <summary>Tables as a document.</summary>
    public static TablesDocument Of(MaterialTables tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        return new(
            tables.Files is { } files ? [files.Materials, files.BuildUps, files.Radios, files.Margins, files.Spreads] : [],
            [.. tables.Materials.Values.Select(row => MaterialDocument.From(row, tables))],
            [.. tables.BuildUps.Values.Select(row => FloorDocument.From(row, tables))],
            [.. tables.Radios.Values.Select(row => RadioDocument.From(row, tables))],
            [.. tables.Margins.Select(MarginDocument.From)],
            [.. tables.Bands.Select(BandDocument.From)],
            [.. tables.SpreadRows.Select(SpreadDocument.From)]);
    }
}

/// <summary>One row of the material table, as JSON.</summary>
/// <param name="Name">The word used in house files.</param>
/// <param name="Description">What it is.</param>
/// <param name="LossDb">Median loss at 2.4 GHz and normal incidence, dB.</param>
/// <param name="SpreadDb">One standard deviation between examples, dB.</param>
/// <param name="ThicknessM">The thickness that the loss is for, metres; omitted if it does not matter.</param>
/// <param name="Form"><c>sheet</c> or <c>bulk</c>.</param>
/// <param name="Reflects"><c>metal</c> or <c>board</c>; omitted if its layers or its loss decide.</param>
/// <param name="Layers">Its layers, for a construction.</param>
/// <param name="Studs">Its studs; omitted if it has none.</param>
/// <param name="Source">Where the figure comes from.</param>
/// <param name="Kind">The group of rows it is listed in.</param>
/// <param name="Synonyms">Other words for it.</param>
public sealed record MaterialDocument(
    string Name,
    string Description,
    double LossDb,
    double SpreadDb,
    double? ThicknessM,
    string Form,
    string? Reflects,
    IReadOnlyList<LayerDocument> Layers,
    RibsDocument? Studs,
    string Source,
    string Kind,
    IReadOnlyList<string> Synonyms)
{
    internal static MaterialDocument From(Material material, MaterialTables tables) => new(
        material.Name,
        material.Description,
        material.LossDb,
        material.SpreadDb,
        material.ThicknessMetres,
        material.Form == LossForm.Bulk ? "bulk" : "sheet",
        material.Reflects switch { SheetReflection.Metal => "metal", SheetReflection.Board => "board", _ => null },
        [.. material.Layers.Select(LayerDocument.From)],
        RibsDocument.From(material.Ribs),
        material.Source,
        tables.KindOf(material.Name),
        tables.AlsoOf(material.Name));
}

/// <summary>One row of the floor table, as JSON.</summary>
/// <param name="Name">The word used in house files.</param>
/// <param name="Description">What it is.</param>
/// <param name="ThicknessM">Total thickness, metres.</param>
/// <param name="Layers">Its layers, top first.</param>
/// <param name="Source">Where the construction and its figures come from.</param>
/// <param name="Synonyms">Other words for it.</param>
public sealed record FloorDocument(string Name, string Description, double ThicknessM, IReadOnlyList<LayerDocument> Layers, string Source, IReadOnlyList<string> Synonyms)
{
    internal static FloorDocument From(FloorBuildUp floor, MaterialTables tables) =>
        new(floor.Name, floor.Description, floor.ThicknessMetres, [.. floor.Layers.Select(LayerDocument.From)], floor.Source, tables.AlsoOf(floor.Name));
}

/// <summary>One layer of a material or a floor build-up, as JSON.</summary>
/// <param name="Material">What it is; <c>air</c> for a cavity.</param>
/// <param name="ThicknessM">Thickness, metres.</param>
/// <param name="ToleranceM">Half the range of thickness between examples, metres.</param>
/// <param name="LossDb">Loss of a layer of a floor, dB; omitted if only the whole construction has one.</param>
/// <param name="Joists">The joists of a joist layer; omitted elsewhere.</param>
public sealed record LayerDocument(string Material, double ThicknessM, double ToleranceM, double? LossDb, RibsDocument? Joists)
{
    private const string Air = "air";

    internal static LayerDocument From(Layer layer) =>
        new(layer.SubstanceName, layer.ThicknessMetres, layer.ToleranceMetres, null, null);

    internal static LayerDocument From(FloorLayer layer) => new(
        layer.Material?.Name ?? Air,
        layer.ThicknessMetres,
        layer.ToleranceMetres,
        layer.Material?.LossDb,
        RibsDocument.From(layer.Joists));
}

/// <summary>Studs or joists, as JSON.</summary>
/// <param name="Material">What a member is made of.</param>
/// <param name="WidthM">Width across its run, metres.</param>
/// <param name="DepthM">Depth through the wall or floor, metres.</param>
/// <param name="SpacingM">Distance between centres, metres.</param>
/// <param name="LossDb">Loss through the full depth of one member, dB.</param>
public sealed record RibsDocument(string Material, double WidthM, double DepthM, double SpacingM, double LossDb)
{
    internal static RibsDocument? From(Ribs? ribs) => ribs is null
        ? null
        : new(ribs.Material.Name, ribs.WidthMetres, ribs.DepthMetres, ribs.SpacingMetres, ribs.Material.LossDb);
}

/// <summary>One row of the radio table, as JSON.</summary>
/// <param name="Name">The word used in house files.</param>
/// <param name="Description">What it is.</param>
/// <param name="TransmitDbm">Power into its antenna, dBm.</param>
/// <param name="AntennaGainDbi">Mean gain of its antenna, dBi.</param>
/// <param name="GainIncludesMismatch">Whether the gain includes the polarisation mismatch loss.</param>
/// <param name="SensitivityDbm">The weakest level it receives, dBm.</param>
/// <param name="HandAndBodyDb">Allowance for the grip, dB.</param>
/// <param name="SpreadDb">One standard deviation between units and grips, dB.</param>
/// <param name="Source">Where the figures come from.</param>
/// <param name="Synonyms">Other words for it.</param>
public sealed record RadioDocument(
    string Name,
    string Description,
    double TransmitDbm,
    double AntennaGainDbi,
    bool GainIncludesMismatch,
    double SensitivityDbm,
    double HandAndBodyDb,
    double SpreadDb,
    string Source,
    IReadOnlyList<string> Synonyms)
{
    internal static RadioDocument From(Radio radio, MaterialTables tables) => new(
        radio.Name,
        radio.Description,
        radio.TransmitPower.Dbm,
        radio.AntennaGainDb,
        radio.GainIncludesMismatch,
        radio.Sensitivity.Dbm,
        radio.HandAndBodyDb,
        radio.SpreadDb,
        radio.Source,
        tables.AlsoOf(radio.Name));
}

/// <summary>One band of the margin table, as JSON.</summary>
/// <param name="LeastProbability">The lowest probability of passing in the band, 0 to 1.</param>
/// <param name="Means">What to expect.</param>
/// <param name="Source">Where that comes from.</param>
public sealed record BandDocument(double LeastProbability, string Means, string Source)
{
    internal static BandDocument From(PassingBand row) => new(row.LeastProbability, row.Means, row.Source);
}

/// <summary>One row of the margin table, as JSON.</summary>
/// <param name="MarginDb">The lowest margin that the row is for, dB.</param>
/// <param name="Means">What to expect.</param>
/// <param name="Source">Where that comes from.</param>
public sealed record MarginDocument(double MarginDb, string Means, string Source)
{
    internal static MarginDocument From(MarginMeaning row) => new(row.MarginDb, row.Means, row.Source);
}

/// <summary>One row of the table of spreads, as JSON.</summary>
/// <param name="Name">Its name in the program.</param>
/// <param name="Description">What it is the spread of.</param>
/// <param name="SpreadDb">One standard deviation, dB; omitted if the row has none.</param>
/// <param name="Share">A share, 0 to 1; omitted if the row has none.</param>
/// <param name="LevelDbm">A level, dBm; omitted if the row has none.</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record SpreadDocument(string Name, string Description, double? SpreadDb, double? Share, double? LevelDbm, string Source)
{
    internal static SpreadDocument From(SpreadRow row) => new(row.Name, row.What, row.SpreadDb, row.Share, row.LevelDbm, row.Source);
}
