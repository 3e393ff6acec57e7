using LinkMargin.Engine.Houses;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Json;

/// <summary>One row of the floor table, as JSON.</summary>
/// <param name="Name">The word used in house files.</param>
/// <param name="What">What it is.</param>
/// <param name="ThicknessM">All layers together, metres.</param>
/// <param name="Layers">Its layers, top first.</param>
/// <param name="Source">Where the construction and its figures are from.</param>
/// <param name="Also">Other words for it.</param>
public sealed record FloorDocument(string Name, string What, double ThicknessM, IReadOnlyList<LayerDocument> Layers, string Source, IReadOnlyList<string> Also)
{
    internal static FloorDocument From(FloorBuildUp floor, MaterialTables tables) =>
        new(floor.Name, floor.Description, floor.ThicknessMetres, [.. floor.Layers.Select(LayerDocument.From)], floor.Source, tables.AlsoOf(floor.Name));
}
