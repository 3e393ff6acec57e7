using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Decisions.Places;

/// <summary>A place where a console may stand.</summary>
/// <param name="LevelIndex">The level; 0 is the lowest.</param>
/// <param name="Plan">Where on the plan.</param>
/// <param name="HeightMetres">Above the level's floor, metres.</param>
/// <param name="Where">The zone or the room it is in.</param>
public readonly record struct Standing(int LevelIndex, Point2 Plan, double HeightMetres, string Where);
