using LinkMargin.Engine.Geometry;

namespace LinkMargin.Plots.Surfaces;

/// <summary>One unbroken line of equal margin.</summary>
/// <param name="Points">Its corners in order, metres; a closed line repeats its first at the end.</param>
/// <param name="IsClosed">Whether it comes back to where it began.</param>
internal sealed record ContourLine(IReadOnlyList<Point2> Points, bool IsClosed);
