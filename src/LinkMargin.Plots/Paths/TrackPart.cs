namespace LinkMargin.Plots.Paths;

/// <summary>The part of a path between one floor and the next.</summary>
/// <param name="LevelIndex">The level it is on.</param>
/// <param name="Points">Its points, close together, in order from the spot; at least two.</param>
internal sealed record TrackPart(int LevelIndex, IReadOnlyList<TrackPoint> Points)
{
    /// <summary>Its length on the plan, metres.</summary>
    public double PlanMetres { get; } = Points.Zip(Points.Skip(1), (a, b) => a.Plan.DistanceTo(b.Plan)).Sum();

    /// <summary>The point nearest to a share of its points.</summary>
    public TrackPoint AtShare(double share) => Points[(int)Math.Round(share * (Points.Count - 1))];
}
