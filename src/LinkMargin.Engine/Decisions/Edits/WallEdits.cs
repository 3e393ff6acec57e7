using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Edits;

/// <summary>A door or a window opened or shut.</summary>
/// <param name="Name">Its name; several of one name change together.</param>
/// <param name="LevelIndex">The level it is on; null for every level.</param>
/// <param name="IsOpen">Whether it is then open.</param>
public sealed record SetOpening(string Name, int? LevelIndex, bool IsOpen) : HouseEdit
{
    /// <inheritdoc/>
    public override House ApplyTo(House house) => WithWalls(
        house,
        LevelIndex,
        wall => wall.Openings.Any(IsMeant),
        wall => wall with { Openings = [.. wall.Openings.Select(o => IsMeant(o) ? o with { IsOpen = IsOpen } : o)] },
        $"door or window '{Name}'");

    private bool IsMeant(Opening opening) => opening.Kind != OpeningKind.Gap && opening.Name == Name;
}

/// <summary>A wall of another material; its openings stay.</summary>
/// <param name="Name">The wall's name; every stretch of that name changes.</param>
/// <param name="LevelIndex">The level it is on; null for every level.</param>
/// <param name="Material">What it is then made of.</param>
public sealed record SetWallMaterial(string Name, int? LevelIndex, Material Material) : HouseEdit
{
    /// <inheritdoc/>
    public override House ApplyTo(House house) => WithWalls(
        house, LevelIndex, wall => wall.Name == Name, wall => wall with { Material = Material }, $"wall '{Name}'");
}
