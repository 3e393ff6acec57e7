using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Scenes;

/// <summary>A box on the plan with sides along the axes, metres.</summary>
internal readonly record struct PlanBox(double Left, double Bottom, double Right, double Top)
{
    /// <summary>The smallest box round two points.</summary>
    internal static PlanBox Round(Point2 a, Point2 b) =>
        new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X), Math.Max(a.Y, b.Y));

    /// <summary>The smallest box round both.</summary>
    internal PlanBox With(PlanBox other) => new(
        Math.Min(Left, other.Left),
        Math.Min(Bottom, other.Bottom),
        Math.Max(Right, other.Right),
        Math.Max(Top, other.Top));
}
