using LinkMargin.Engine.Geometry;

namespace LinkMargin.Plots.Maps;

/// <summary>A place for a console, found or named, as a map of the choice shows it.</summary>
/// <param name="LevelIndex">The level it is on; 0 is the lowest.</param>
/// <param name="Plan">Where on the plan.</param>
/// <param name="Name">Its name.</param>
/// <param name="Figure">How far its worst seat is above or below what that seat requires, a signed figure in dB, as text prints it.</param>
/// <param name="IsNamed">Whether it is a spot of the house file and not one that was found.</param>
public sealed record ChoiceMark(int LevelIndex, Point2 Plan, string Name, string Figure, bool IsNamed);
