using LinkMargin.Engine.Geometry;

namespace LinkMargin.Plots.Plans;

/// <summary>A place to take a reading at.</summary>
/// <param name="LevelIndex">The level it is on; 0 is the lowest.</param>
/// <param name="Plan">Where on the plan.</param>
/// <param name="Text">What is written beside it: its number and what to send from.</param>
public sealed record MeasurementMark(int LevelIndex, Point2 Plan, string Text);
