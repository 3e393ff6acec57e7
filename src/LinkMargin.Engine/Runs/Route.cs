using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Runs;

/// <summary>Where a cable may lie.</summary>
/// <param name="Legs">Its legs in order, from the source.</param>
public sealed record Route(IReadOnlyList<RouteLeg> Legs)
{
    /// <summary>Greatest sum of corners between two pull points, degrees (common practice).</summary>
    public const double MostDegrees = 360;

    // Two legs that meet at less than this angle make no corner; cosine of 30°.
    private const double RunsOnCosine = 0.866;

    // Rounding must not make four right angles more than four.
    private const double SlackDegrees = 0.1;

    /// <summary>Length along structure, metres, without slack.</summary>
    public double LengthMetres => Legs.Sum(leg => leg.LengthMetres);

    /// <summary>Holes to be bored.</summary>
    public int Holes => Legs.Sum(leg => leg.Holes);

    /// <summary>Of them, those in joists.</summary>
    public int JoistHoles => Legs.Sum(leg => leg.JoistHoles);

    /// <summary>The passages it goes through, in order.</summary>
    public IReadOnlyList<string> Passages => [.. Legs.Where(leg => leg.Kind == LegKind.ThroughPassage).Select(leg => leg.Where).Distinct()];

    /// <summary>Its line, from the source.</summary>
    public IReadOnlyList<Point3> Line
    {
        get
        {
            List<Point3> line = [];
            foreach (Point3 at in Legs.SelectMany(leg => leg.Corner is { } corner ? [leg.From, corner, leg.To] : new[] { leg.From, leg.To }))
            {
                if (line.Count == 0 || line[^1].DistanceTo(at) > GeometryTolerances.SlackMetres)
                {
                    line.Add(at);
                }
            }

            return line;
        }
    }

    /// <summary>Its corners in order, those within passages among them.</summary>
    public IReadOnlyList<RouteBend> Bends
    {
        get
        {
            List<RouteBend> bends = [];
            Point3? before = null;
            for (int i = 0; i < Legs.Count; i++)
            {
                RouteLeg leg = Legs[i];
                if (leg.Kind == LegKind.ThroughWall)
                {
                    // One corner into the wall and one out of it, along its other side.
                    bends.AddRange([new RouteBend(leg, 90, true), new RouteBend(leg, 90, true)]);
                    before = null;
                    continue;
                }

                Point3[] points = leg.Corner is { } corner ? [leg.From, corner, leg.To] : [leg.From, leg.To];
                for (int j = 0; j + 1 < points.Length; j++)
                {
                    Point3 way = points[j + 1] - points[j];
                    if (way.Length <= GeometryTolerances.SlackMetres)
                    {
                        continue;
                    }

                    bool isWithin = leg.Kind == LegKind.ThroughPassage && i > 0 && Legs[i - 1].Kind == LegKind.ThroughPassage && Legs[i - 1].Where == leg.Where;
                    if (!isWithin && before is { } last && last.Unit.Dot(way.Unit) is var cosine && cosine < RunsOnCosine)
                    {
                        bool isHidden = leg.Kind == LegKind.InFloor || (j == 0 && i > 0 && Legs[i - 1].Kind == LegKind.InFloor);
                        bends.Add(new RouteBend(leg, double.RadiansToDegrees(Math.Acos(Math.Clamp(cosine, -1, 1))), !isHidden));
                    }

                    before = way;
                }

                // A passage has the corners that the house file says, whatever its ends are.
                if (i == 0 || Legs[i - 1].Where != leg.Where || Legs[i - 1].Kind != leg.Kind)
                {
                    bends.AddRange(Enumerable.Repeat(new RouteBend(leg, 90, false), leg.InnerBends));
                }
            }

            return bends;
        }
    }

    /// <summary>The sum of its corners, degrees.</summary>
    public double BendDegrees => Bends.Sum(bend => bend.Degrees);

    /// <summary>
    /// The stretches in which it is pulled, from one corner that can be reached to another: each as long as its corners sum to no more than
    /// <see cref="MostDegrees"/>. A stretch without a corner that can be reached exceeds that.
    /// </summary>
    public IReadOnlyList<PullStretch> Stretches
    {
        get
        {
            List<PullStretch> stretches = [];
            List<RouteBend> open = [];
            RouteLeg? from = null;
            foreach (RouteBend bend in Bends)
            {
                open.Add(bend);
                while (open.Sum(one => one.Degrees) > MostDegrees + SlackDegrees && open.FindLastIndex(one => one.IsReached) is >= 0 and var cut)
                {
                    stretches.Add(new PullStretch(from, cut, open.Take(cut).Sum(one => one.Degrees)));
                    from = open[cut].Before;
                    open.RemoveRange(0, cut + 1);
                }
            }

            stretches.Add(new PullStretch(from, open.Count, open.Sum(one => one.Degrees)));
            return stretches;
        }
    }
}

/// <summary>A corner of a route.</summary>
/// <param name="Before">The leg that begins or turns there.</param>
/// <param name="Degrees">By how much it turns.</param>
/// <param name="IsReached">Whether it can be reached by hand: not within a floor or a passage.</param>
public sealed record RouteBend(RouteLeg Before, double Degrees, bool IsReached);

/// <summary>A part of a route that is pulled in one go.</summary>
/// <param name="From">The leg at whose start it is pulled; null for the end at the source.</param>
/// <param name="Bends">Number of corners in it.</param>
/// <param name="Degrees">Their sum.</param>
public sealed record PullStretch(RouteLeg? From, int Bends, double Degrees)
{
    /// <summary>Friction of a cable that slides over corners, without lubricant (common practice: 0.3 to 0.5).</summary>
    public const double Friction = 0.4;

    /// <summary>Factor by which its corners raise the pulling force: the capstan equation, friction times angle.</summary>
    public double ForceTimes => Math.Exp(Friction * double.DegreesToRadians(Degrees));
}
