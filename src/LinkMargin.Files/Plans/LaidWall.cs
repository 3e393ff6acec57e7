using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Plans;

/// <summary>A wall of the level in its final place, before its openings are cut.</summary>
/// <param name="Name">Its name.</param>
/// <param name="PolylineName">The name of the polyline it was written in, where that had one.</param>
/// <param name="Segment">Where it runs, west or south end first.</param>
/// <param name="BaseMetres">Bottom edge above the floor, metres.</param>
/// <param name="TopMetres">Top edge above the floor, metres.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Stretches">Which rooms it has on its sides.</param>
internal sealed record LaidWall(
    string Name,
    string? PolylineName,
    Segment Segment,
    double BaseMetres,
    double TopMetres,
    Material Material,
    IReadOnlyList<WallStretch> Stretches);
