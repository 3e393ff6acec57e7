namespace LinkMargin.Engine.Houses;

/// <summary>What lies between two levels, from the walking surface down to the ceiling below.</summary>
/// <param name="Name">The word used in house files, such as <c>timber-joist-225</c>.</param>
/// <param name="Layers">Layers, top first, at least one.</param>
/// <param name="Source">Where the construction and its figures are from.</param>
public sealed record FloorBuildUp(string Name, IReadOnlyList<FloorLayer> Layers, string Source)
{
    /// <summary>What it is, in words a builder would use.</summary>
    public string Description { get; init; } = "";

    /// <summary>All layers together, metres.</summary>
    public double ThicknessMetres => Layers.Sum(layer => layer.ThicknessMetres);
}
