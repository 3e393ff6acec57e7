using LinkMargin.Engine.Geometry;

namespace LinkMargin.Plots.Paths;

/// <summary>A place on a path as it is drawn.</summary>
/// <param name="Plan">Where on the plan, metres.</param>
/// <param name="LevelIndex">The level it is on.</param>
/// <param name="AlongMetres">From the spot along the path, metres.</param>
/// <param name="Direction">Unit vector of the way it runs on the plan.</param>
internal readonly record struct TrackPoint(Point2 Plan, int LevelIndex, double AlongMetres, Point2 Direction);
