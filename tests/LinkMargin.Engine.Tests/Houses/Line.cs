using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>A straight line between two places in a house.</summary>
internal readonly record struct Line(Point3 From, Point3 To)
{
    internal Line Reversed => new(To, From);
}
