using LinkMargin.Engine.Geometry;

namespace LinkMargin.Plots.Plans;

/// <summary>A point on a plan with a shape and a label.</summary>
/// <param name="Kind">What it stands for.</param>
/// <param name="Place">Where, metres.</param>
/// <param name="Name">First part of the label.</param>
/// <param name="Figure">Second part, written bold; empty for none.</param>
/// <param name="FacingDegrees">Where a player looks, anticlockwise from x; null for none.</param>
internal sealed record PlanMark(MarkKind Kind, Point2 Place, string Name, string Figure, double? FacingDegrees);
