namespace LinkMargin.Engine.Geometry;

/// <summary>
/// A house's own directions on the plan: those of its walls. Samples along them turn, move and mirror with the house, so no
/// result depends on how the plan lies on the paper.
/// </summary>
internal readonly record struct PlanFrame(double Cos, double Sin)
{
    /// <summary>A vector in the house's directions as one on the plan.</summary>
    internal Point2 ToPlan(double along, double across) => new((Cos * along) - (Sin * across), (Sin * along) + (Cos * across));

    /// <summary>A plan vector in the house's directions.</summary>
    internal Point2 FromPlan(Point2 p) => new((Cos * p.X) + (Sin * p.Y), (Cos * p.Y) - (Sin * p.X));
}
