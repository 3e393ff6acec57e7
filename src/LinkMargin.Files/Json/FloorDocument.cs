using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Json;

/// <summary>One row of the floor table, as JSON.</summary>
/// <param name="Name">The word used in house files.</param>
/// <param name="What">What it is.</param>
/// <param name="ThicknessM">All layers together, metres.</param>
/// <param name="Layers">Its layers, top first.</param>
/// <param name="Source">Where the construction and its figures are from.</param>
public sealed record FloorDocument(string Name, string What, double ThicknessM, IReadOnlyList<LayerDocument> Layers, string Source)
{
    internal static FloorDocument From(FloorBuildUp floor) =>
        new(floor.Name, floor.Description, floor.ThicknessMetres, [.. floor.Layers.Select(LayerDocument.From)], floor.Source);
}
