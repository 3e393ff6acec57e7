using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>The direction that the walls of a house share.</summary>
internal static class WallDirection
{
    /// <summary>
    /// The direction, modulo a quarter turn, that the walls share: the mean of four times their angles, weighted by length.
    /// Relisting walls, swapping the ends of one or cutting one in parts does not change it.
    /// </summary>
    internal static PlanFrame Of(House house)
    {
        double x = 0, y = 0;
        foreach (Wall wall in house.Levels.SelectMany(level => level.Walls))
        {
            Point2 along = wall.End - wall.Start;
            (double sin, double cos) = Math.SinCos(4 * Math.Atan2(along.Y, along.X));
            x += wall.LengthMetres * cos;
            y += wall.LengthMetres * sin;
        }

        double angle = x == 0 && y == 0 ? 0 : Math.Atan2(y, x) / 4;
        return new PlanFrame(Math.Cos(angle), Math.Sin(angle));
    }
}
