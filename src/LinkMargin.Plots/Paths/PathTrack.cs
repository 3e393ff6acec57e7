using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;

namespace LinkMargin.Plots.Paths;

/// <summary>
/// A path as drawn on plans: cut where it goes from one level to the next, and offset a little where others
/// coincide with it. It returns to its true line at both ends and at every turn.
/// </summary>
internal sealed class PathTrack
{
    private const double StepMetres = 0.05;
    private const double CornerCosine = 0.996; // 5 degrees: less does not count as a corner

    private readonly List<TrackPoint> points = [];

    private PathTrack(IReadOnlyList<TrackPart> parts)
    {
        Parts = parts;
        points.AddRange(parts.SelectMany(part => part.Points));
    }

    /// <summary>Its parts in order from the spot.</summary>
    public IReadOnlyList<TrackPart> Parts { get; }

    /// <summary>The track of a path that consists of lines.</summary>
    /// <param name="house">The house.</param>
    /// <param name="path">The path.</param>
    /// <param name="asideMetres">Offset to the left of its true line.</param>
    /// <param name="easeMetres">Length over which it returns to its true line.</param>
    public static PathTrack Of(House house, PathBudget path, double asideMetres = 0, double easeMetres = 1)
    {
        double[] bounds = [.. house.Levels.Zip(house.Levels.Skip(1), (below, over) => (below.CeilingMetres + over.ElevationMetres) / 2)];
        return Of(path.Path.Points, path.Path.Points, bounds, asideMetres, easeMetres);
    }

    /// <summary>The track of such a path on a vertical cut: in one part, with positions on the cut.</summary>
    /// <param name="cut">The cut.</param>
    /// <param name="path">The path.</param>
    /// <param name="asideMetres">Offset to the left of its true line.</param>
    /// <param name="easeMetres">Length over which it returns to its true line.</param>
    public static PathTrack Of(SectionCut cut, PathBudget path, double asideMetres = 0, double easeMetres = 1) =>
        Of([.. path.Path.Points.Select(point => cut.Seen(point).At(0))], path.Path.Points, [], asideMetres, easeMetres);

    // Drawn through the given corners; lengths along the path are measured between its true corners.
    private static PathTrack Of(
        IReadOnlyList<Point3> corners, IReadOnlyList<Point3> trueCorners, double[] bounds, double asideMetres, double easeMetres)
    {
        double[] places = TurnPlaces(corners);
        var parts = new List<List<TrackPoint>>();
        double along = 0, onPlan = 0;
        for (int leg = 0; leg + 1 < corners.Count; leg++)
        {
            Point3 from = corners[leg], to = corners[leg + 1];
            double metres = trueCorners[leg].DistanceTo(trueCorners[leg + 1]), planMetres = from.Plan.DistanceTo(to.Plan);
            Point2 direction = planMetres > 0 ? (1 / planMetres) * (to.Plan - from.Plan) : new Point2(1, 0);
            double[] cuts = [0, .. CutsOf(from.Z, to.Z, bounds), 1];
            for (int c = 0; c + 1 < cuts.Length; c++)
            {
                int level = LevelAt(from.Towards(to, (cuts[c] + cuts[c + 1]) / 2).Z, bounds);
                if (parts.Count == 0 || parts[^1][^1].LevelIndex != level)
                {
                    parts.Add([]);
                }

                int steps = Math.Max(1, (int)Math.Ceiling((cuts[c + 1] - cuts[c]) * planMetres / StepMetres));
                for (int i = parts[^1].Count == 0 ? 0 : 1; i <= steps; i++)
                {
                    double t = cuts[c] + ((cuts[c + 1] - cuts[c]) * i / steps);
                    double toTurn = places.Min(place => Math.Abs(place - (onPlan + (t * planMetres))));
                    double aside = asideMetres * Ease(toTurn / easeMetres);
                    Point2 plan = from.Towards(to, t).Plan + (aside * new Point2(-direction.Y, direction.X));
                    parts[^1].Add(new TrackPoint(plan, level, along + (t * metres), direction));
                }
            }

            along += metres;
            onPlan += planMetres;
        }

        return new PathTrack([.. parts.Select(part => new TrackPart(part[0].LevelIndex, part))]);
    }

    /// <summary>The point at a distance from the spot along the path.</summary>
    public TrackPoint At(double alongMetres) => points.MinBy(point => Math.Abs(point.AlongMetres - alongMetres));

    /// <summary>The share of this track with another one within the given distance, 0 to 1.</summary>
    public double ShareBeside(PathTrack other, double withinMetres)
    {
        // The points of both tracks are close enough together to compare points instead of lines.
        int beside = points.Count(point => other.points.Exists(o => o.Plan.DistanceTo(point.Plan) <= withinMetres));
        return (double)beside / points.Count;
    }

    private static double Ease(double share)
    {
        double s = Math.Clamp(share, 0, 1);
        return s * s * (3 - (2 * s));
    }

    // Both ends and every visible corner, by distance along the path on the plan.
    private static double[] TurnPlaces(IReadOnlyList<Point3> corners)
    {
        var places = new List<double> { 0 };
        double onPlan = 0;
        for (int i = 1; i + 1 < corners.Count; i++)
        {
            Point2 before = corners[i].Plan - corners[i - 1].Plan, after = corners[i + 1].Plan - corners[i].Plan;
            double lengths = Math.Sqrt(Point2.Dot(before, before) * Point2.Dot(after, after));
            onPlan += corners[i].Plan.DistanceTo(corners[i - 1].Plan);
            if (lengths > 0 && Point2.Dot(before, after) < CornerCosine * lengths)
            {
                places.Add(onPlan);
            }
        }

        places.Add(onPlan + corners[^1].Plan.DistanceTo(corners[^2].Plan));
        return [.. places];
    }

    private static IEnumerable<double> CutsOf(double fromZ, double toZ, double[] bounds) => bounds
        .Where(bound => (bound - fromZ) * (bound - toZ) < 0)
        .Select(bound => (bound - fromZ) / (toZ - fromZ))
        .Order();

    private static int LevelAt(double z, double[] bounds) => bounds.Count(bound => bound <= z);
}

/// <summary>A point on a path as drawn.</summary>
/// <param name="Plan">Its position on the plan, metres.</param>
/// <param name="LevelIndex">The level it is on.</param>
/// <param name="AlongMetres">Distance from the spot along the path, metres.</param>
/// <param name="Direction">Unit vector of its direction on the plan.</param>
internal readonly record struct TrackPoint(Point2 Plan, int LevelIndex, double AlongMetres, Point2 Direction);

/// <summary>The part of a path between one floor and the next.</summary>
/// <param name="LevelIndex">The level it is on.</param>
/// <param name="Points">Its points, close together, in order from the spot; at least two.</param>
internal sealed record TrackPart(int LevelIndex, IReadOnlyList<TrackPoint> Points)
{
    /// <summary>Its length on the plan, metres.</summary>
    public double PlanMetres { get; } = Points.Zip(Points.Skip(1), (a, b) => a.Plan.DistanceTo(b.Plan)).Sum();

    /// <summary>The point at a share of its length.</summary>
    public TrackPoint AtShare(double share) => Points[(int)Math.Round(share * (Points.Count - 1))];
}

/// <summary>A path with the line it is drawn on.</summary>
/// <param name="Entry">The path.</param>
/// <param name="Track">The line it is drawn on.</param>
internal sealed record DrawnPath(PathEntry Entry, PathTrack Track);
