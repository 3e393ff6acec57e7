using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;

namespace LinkMargin.Plots.Paths;

/// <summary>
/// A path as it is drawn on plans: cut where it goes from one level to the next, and moved aside by a little where others
/// take the same way. It comes back to its true line at both ends and wherever it turns.
/// </summary>
internal sealed class PathTrack
{
    private const double StepMetres = 0.05;
    private const double CornerCosine = 0.996; // 5 degrees: less is no corner

    private readonly List<TrackPoint> points = [];

    private PathTrack(IReadOnlyList<TrackPart> parts)
    {
        Parts = parts;
        points.AddRange(parts.SelectMany(part => part.Points));
    }

    /// <summary>Its parts in order from the spot.</summary>
    public IReadOnlyList<TrackPart> Parts { get; }

    /// <summary>The track of a path that runs on lines.</summary>
    /// <param name="house">The house.</param>
    /// <param name="path">The path.</param>
    /// <param name="asideMetres">How far to the left of its true line it is drawn.</param>
    /// <param name="easeMetres">Over which length it comes back to its true line.</param>
    public static PathTrack Of(House house, PathBudget path, double asideMetres = 0, double easeMetres = 1)
    {
        double[] bounds = [.. house.Levels.Zip(house.Levels.Skip(1), (below, over) => (below.CeilingMetres + over.ElevationMetres) / 2)];
        return Of(path.Path.Points, path.Path.Points, bounds, asideMetres, easeMetres);
    }

    /// <summary>The track of such a path on an upright cut: all in one part, its places those of the cut.</summary>
    /// <param name="cut">The cut.</param>
    /// <param name="path">The path.</param>
    /// <param name="asideMetres">How far to the left of its true line it is drawn.</param>
    /// <param name="easeMetres">Over which length it comes back to its true line.</param>
    public static PathTrack Of(SectionCut cut, PathBudget path, double asideMetres = 0, double easeMetres = 1) =>
        Of([.. path.Path.Points.Select(point => cut.Seen(point).At(0))], path.Path.Points, [], asideMetres, easeMetres);

    // Drawn through some corners; lengths along the path are those between its true ones.
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

    /// <summary>The place a length from the spot along the path.</summary>
    public TrackPoint At(double alongMetres) => points.MinBy(point => Math.Abs(point.AlongMetres - alongMetres));

    /// <summary>Which share of this track runs beside another, nowhere farther from it than given, 0 to 1.</summary>
    public double ShareBeside(PathTrack other, double withinMetres)
    {
        // Both tracks' points lie close enough together for points to stand for lines.
        int beside = points.Count(point => other.points.Exists(o => o.Plan.DistanceTo(point.Plan) <= withinMetres));
        return (double)beside / points.Count;
    }

    private static double Ease(double share)
    {
        double s = Math.Clamp(share, 0, 1);
        return s * s * (3 - (2 * s));
    }

    // Both ends and every corner that shows, by their place along the path on the plan.
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

/// <summary>A place on a path as it is drawn.</summary>
/// <param name="Plan">Where on the plan, metres.</param>
/// <param name="LevelIndex">The level it is on.</param>
/// <param name="AlongMetres">From the spot along the path, metres.</param>
/// <param name="Direction">Unit vector of the way it runs on the plan.</param>
internal readonly record struct TrackPoint(Point2 Plan, int LevelIndex, double AlongMetres, Point2 Direction);

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

/// <summary>A path with the line it is drawn on.</summary>
/// <param name="Entry">The path.</param>
/// <param name="Track">Where it is drawn.</param>
internal sealed record DrawnPath(PathEntry Entry, PathTrack Track);
