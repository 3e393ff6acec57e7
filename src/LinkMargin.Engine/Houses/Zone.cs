using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>Where a console may stand: shelves, a cupboard, the top of a cabinet.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LevelIndex">The level it is on; 0 is the lowest.</param>
/// <param name="Outline">How far it reaches on the plan.</param>
/// <param name="HeightsMetres">The heights above that level's floor that a console may have there, metres; at least one.</param>
public sealed record Zone(string Name, int LevelIndex, Polygon Outline, IReadOnlyList<double> HeightsMetres);
