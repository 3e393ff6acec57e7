using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>A candidate place for a console.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LevelIndex">The level it is on; 0 is the lowest.</param>
/// <param name="Plan">Where on the plan.</param>
/// <param name="HeightMetres">Above the level's floor, metres.</param>
public sealed record Spot(string Name, int LevelIndex, Point2 Plan, double HeightMetres);
