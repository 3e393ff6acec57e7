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
    /// <summary>Openings, which lie inside the wall and do not overlap.</summary>
    public IReadOnlyList<Opening> Openings { get; init; } = [];

    /// <summary>Length on the plan, metres.</summary>
    public double LengthMetres => Start.DistanceTo(End);
}
