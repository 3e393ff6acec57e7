using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Edits;

/// <summary>A wall made of something else; its openings stay.</summary>
/// <param name="Name">The wall's name; every stretch of that name changes.</param>
/// <param name="LevelIndex">The level it is on; null for every level.</param>
/// <param name="Material">What it is then made of.</param>
public sealed record SetWallMaterial(string Name, int? LevelIndex, Material Material) : HouseEdit
{
    /// <inheritdoc/>
    public override House ApplyTo(House house) => WithWalls(
        house, LevelIndex, wall => wall.Name == Name, wall => wall with { Material = Material }, $"wall '{Name}'");
}
