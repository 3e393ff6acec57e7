using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>
/// A house's own directions on the plan: those its walls run in. What is sampled along them turns, moves and mirrors with
/// the house, so no answer depends on which way its plan was laid on the paper.
/// </summary>
internal readonly record struct PlanFrame(double Cos, double Sin)
{
    /// <summary>
    /// The direction, within a quarter turn, that the walls share: the mean of their directions with four times the angle
    /// and their lengths as weights, which neither the order, the ends nor the number of parts of a wall can change.
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

    /// <summary>A vector in the house's directions as one on the plan.</summary>
    internal Point2 ToPlan(double along, double across) => new((Cos * along) - (Sin * across), (Sin * along) + (Cos * across));

    /// <summary>A plan vector in the house's directions.</summary>
    internal Point2 FromPlan(Point2 p) => new((Cos * p.X) + (Sin * p.Y), (Cos * p.Y) - (Sin * p.X));
}
