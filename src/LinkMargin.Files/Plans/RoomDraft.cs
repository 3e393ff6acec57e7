using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans;

/// <summary>A room as written: a rectangle is given as its four corners.</summary>
internal sealed record RoomDraft(string Name, IReadOnlyList<Point2> Outline, Mark Mark);
