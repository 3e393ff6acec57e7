using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Runs;

/// <summary>What a leg of a cable's route is.</summary>
public enum LegKind
{
    /// <summary>Between a socket and the wall.</summary>
    ToWall,

    /// <summary>Between a passage and the wall.</summary>
    ToPassage,

    /// <summary>Along a wall at the floor.</summary>
    AlongFloor,

    /// <summary>Along a wall under the ceiling.</summary>
    AlongCeiling,

    /// <summary>Up or down a wall.</summary>
    Riser,

    /// <summary>Through a hole bored in a wall.</summary>
    ThroughWall,

    /// <summary>Through a hole bored in a ceiling, into the floor above.</summary>
    ThroughCeiling,

    /// <summary>Through a hole bored in a floor, into the space below.</summary>
    ThroughFloor,

    /// <summary>Through a hole bored through a whole floor.</summary>
    ThroughSlab,

    /// <summary>In a floor, along its joists, and across them where it must be.</summary>
    InFloor,

    /// <summary>Through a passage that is there.</summary>
    ThroughPassage,
}

/// <summary>One leg of a cable's route.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Where">The room, wall, passage or level it belongs to; for a floor, the level below it.</param>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="LengthMetres">Its length along structure, metres.</param>
/// <param name="Holes">Holes to be bored for it.</param>
public sealed record RouteLeg(LegKind Kind, string Where, Point3 From, Point3 To, double LengthMetres, int Holes)
{
    /// <summary>The corner between the part along the joists and the part across; null for other legs.</summary>
    public Point3? Corner { get; init; }

    /// <summary>How many of its holes are in joists.</summary>
    public int JoistHoles => Kind == LegKind.InFloor ? Holes : 0;
}

/// <summary>Where a cable may lie.</summary>
/// <param name="Legs">Its legs in order, from the source.</param>
public sealed record Route(IReadOnlyList<RouteLeg> Legs)
{
    // Two legs that meet at less than this run on; cosine of 30°.
    private const double RunsOnCosine = 0.866;

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

    /// <summary>Its corners.</summary>
    public int Bends
    {
        get
        {
            IReadOnlyList<Point3> line = Line;
            return Enumerable.Range(1, Math.Max(0, line.Count - 2))
                .Count(i => (line[i] - line[i - 1]).Unit.Dot((line[i + 1] - line[i]).Unit) < RunsOnCosine);
        }
    }
}
