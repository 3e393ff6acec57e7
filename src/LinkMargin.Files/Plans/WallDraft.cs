using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans;

/// <summary>A wall as written, along a polyline. Top is null for a full-height wall.</summary>
internal sealed record WallDraft(
    string? Name, IReadOnlyList<Point2> Along, Material Material, double BaseMetres, double? TopMetres, Mark Mark);
