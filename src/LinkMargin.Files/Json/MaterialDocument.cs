using LinkMargin.Engine.Houses;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Json;

/// <summary>One row of the material table, as JSON.</summary>
/// <param name="Name">The word used in house files.</param>
/// <param name="What">What it is.</param>
/// <param name="LossDb">Median loss at 2.4 GHz, head on, dB.</param>
/// <param name="SpreadDb">One standard deviation between examples, dB.</param>
/// <param name="ThicknessM">The thickness the loss belongs to, metres; left out where it plays no part.</param>
/// <param name="Form"><c>sheet</c> or <c>bulk</c>.</param>
/// <param name="Layers">Its layers, for a construction.</param>
/// <param name="Studs">Its studs; left out where there are none.</param>
/// <param name="Source">Where the figure is from.</param>
/// <param name="Kind">The kind of rows it stands with.</param>
/// <param name="Also">Other words for it.</param>
public sealed record MaterialDocument(
    string Name,
    string What,
    double LossDb,
    double SpreadDb,
    double? ThicknessM,
    string Form,
    IReadOnlyList<LayerDocument> Layers,
    RibsDocument? Studs,
    string Source,
    string Kind,
    IReadOnlyList<string> Also)
{
    internal static MaterialDocument From(Material material, MaterialTables tables) => new(
        material.Name,
        material.Description,
        material.LossDb,
        material.SpreadDb,
        material.ThicknessMetres,
        material.Form == LossForm.Bulk ? "bulk" : "sheet",
        [.. material.Layers.Select(LayerDocument.From)],
        RibsDocument.From(material.Ribs),
        material.Source,
        tables.KindOf(material.Name),
        tables.AlsoOf(material.Name));
}
