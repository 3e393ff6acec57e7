using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Plots.Plans;

/// <summary>How a door is drawn when it stands open.</summary>
/// <param name="Hinge">The hinged edge, metres.</param>
/// <param name="Latch">Where the free edge is when shut.</param>
/// <param name="Tip">Where the free edge is when open, a quarter turn on.</param>
/// <param name="TurnsLeft">Whether it opens anticlockwise on the plan.</param>
internal sealed record DoorSwing(Point2 Hinge, Point2 Latch, Point2 Tip, bool TurnsLeft)
{
    /// <summary>
    /// A house file does not say which way a door swings; it is drawn hinged at the end nearer the wall's start, into a
    /// room, and to the wall's left where there are rooms on both sides.
    /// </summary>
    public static DoorSwing Of(Level level, Wall wall, Opening door)
    {
        (Point2 along, Point2 left) = WallShape.DirectionsOf(wall);
        Point2 hinge = wall.Start + (door.OffsetMetres * along);
        Point2 latch = hinge + (door.WidthMetres * along);
        Point2 middle = hinge + (door.WidthMetres / 2 * along);
        bool IsRoom(double aside) => level.Rooms.Any(r => r.Outline.Contains(middle + (aside * left)));
        bool turnsLeft = level.Rooms.Count == 0 || IsRoom(door.WidthMetres / 2) || !IsRoom(-door.WidthMetres / 2);
        return new(hinge, latch, hinge + ((turnsLeft ? door.WidthMetres : -door.WidthMetres) * left), turnsLeft);
    }
}
