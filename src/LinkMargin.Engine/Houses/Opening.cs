namespace LinkMargin.Engine.Houses;

/// <summary>A rectangle in a wall that is not the wall's material: a door, a window or a bare gap.</summary>
/// <param name="Name">Its name, or a description of where it is.</param>
/// <param name="Kind">What it is.</param>
/// <param name="OffsetMetres">From the wall's start to the nearer jamb, metres, along the wall.</param>
/// <param name="WidthMetres">Clear width, metres.</param>
/// <param name="SillMetres">Bottom edge above the level's floor, metres.</param>
/// <param name="HeightMetres">Bottom edge to top edge, metres.</param>
/// <param name="Leaf">What closes it; null for a bare gap.</param>
/// <param name="IsOpen">Whether it stands open.</param>
public sealed record Opening(
    string Name,
    OpeningKind Kind,
    double OffsetMetres,
    double WidthMetres,
    double SillMetres,
    double HeightMetres,
    Material? Leaf,
    bool IsOpen)
{
    /// <summary>What a line through it meets: nothing when it stands open or has no leaf.</summary>
    public Material? Filling => IsOpen ? null : Leaf;
}
