using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>One straight vertical panel. A polyline in a house file becomes one of these for each stretch.</summary>
/// <param name="Name">Where it is, such as <c>games den | passage</c>.</param>
/// <param name="Start">One end on the plan.</param>
/// <param name="End">The other end.</param>
/// <param name="BaseMetres">Bottom edge above the level's floor, metres; 0 for most.</param>
/// <param name="TopMetres">Top edge above the level's floor, metres; the clear height for a full wall.</param>
/// <param name="Material">What it is made of.</param>
public sealed record Wall(string Name, Point2 Start, Point2 End, double BaseMetres, double TopMetres, Material Material)
{
    /// <summary>Thickness of a wall whose material states none, metres: a stud partition, common practice.</summary>
    public const double UsualThicknessMetres = 0.1;

    /// <summary>Openings, which lie inside the wall and do not overlap.</summary>
    public IReadOnlyList<Opening> Openings { get; init; } = [];

    /// <summary>Length on the plan, metres.</summary>
    public double LengthMetres => Start.DistanceTo(End);

    /// <summary>From its line on the plan to either face, metres.</summary>
    public double HalfThicknessMetres => (Material.ThicknessMetres ?? UsualThicknessMetres) / 2;
}

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
    /// <summary>What a line through it crosses: nothing when it stands open or has no leaf.</summary>
    public Material? Filling => IsOpen ? null : Leaf;
}

/// <summary>What an opening is; decides how a plan draws it, never its loss.</summary>
public enum OpeningKind
{
    /// <summary>A door, drawn with its swing.</summary>
    Door,

    /// <summary>A window, drawn with its glass line.</summary>
    Window,

    /// <summary>A passage without a leaf.</summary>
    Gap,
}
