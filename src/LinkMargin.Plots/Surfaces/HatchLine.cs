using LinkMargin.Engine.Geometry;

namespace LinkMargin.Plots.Surfaces;

/// <summary>One stroke of a hatch.</summary>
/// <param name="From">One end, metres.</param>
/// <param name="To">The other end.</param>
internal readonly record struct HatchLine(Point2 From, Point2 To);
