using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>Rooms in rows and columns, and the stretches of wall round and between them.</summary>
internal static class RoomGrid
{
    /// <summary>One stretch of wall, and whether the outside lies behind it.</summary>
    internal readonly record struct Side(Point2 Start, Point2 End, bool IsOuter);

    internal static Room[] Rooms(double[] xs, double[] ys) =>
    [
        .. from j in Enumerable.Range(0, ys.Length - 1)
           from i in Enumerable.Range(0, xs.Length - 1)
           select new Room($"room {i} {j}", new Polygon(
           [
               new(xs[i], ys[j]), new(xs[i + 1], ys[j]), new(xs[i + 1], ys[j + 1]), new(xs[i], ys[j + 1]),
           ])),
    ];

    internal static Side[] Sides(double[] xs, double[] ys) =>
    [
        .. from i in Enumerable.Range(0, xs.Length)
           from j in Enumerable.Range(0, ys.Length - 1)
           select new Side(new(xs[i], ys[j]), new(xs[i], ys[j + 1]), i == 0 || i == xs.Length - 1),
        .. from j in Enumerable.Range(0, ys.Length)
           from i in Enumerable.Range(0, xs.Length - 1)
           select new Side(new(xs[i], ys[j]), new(xs[i + 1], ys[j]), j == 0 || j == ys.Length - 1),
    ];
}
