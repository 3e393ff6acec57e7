using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>Where somebody looks, in degrees anticlockwise from the x axis, 0 to below 360.</summary>
public static class Facing
{
    /// <summary>From one place towards another; the two differ.</summary>
    public static double Degrees(Point2 from, Point2 towards) =>
        Once(double.RadiansToDegrees(Math.Atan2(towards.Y - from.Y, towards.X - from.X)));

    /// <summary>The same direction as an angle of less than one turn.</summary>
    public static double Once(double degrees) => ((degrees % 360) + 360) % 360;
}
