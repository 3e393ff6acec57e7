using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Plans.Walls;

/// <summary>Checks written walls and cuts them into straight segments.</summary>
internal static class WrittenWalls
{
    /// <summary>The segments of every valid wall; the others are reported.</summary>
    internal static IReadOnlyList<WrittenWall> From(PlanDraft draft, PlanProblems problems) =>
        [.. draft.Walls.SelectMany(wall => Fault(wall, draft.HeightMetres, problems.Lengths) is { } fault
            ? Refuse(wall, fault, problems)
            : Stretches(wall, draft.HeightMetres))];

    private static WrittenWall[] Refuse(WallDraft wall, string fault, PlanProblems problems)
    {
        problems.Error(wall.Mark, $"{Label(wall)} {fault}");
        return [];
    }

    private static string Label(WallDraft wall) =>
        wall.Name is null ? $"this {wall.Material.Name} wall" : $"wall {Quote.Of(wall.Name)}";

    private static string? Fault(WallDraft wall, double heightMetres, LengthFormat lengths)
    {
        if (wall.Along.Count < 2)
        {
            return "has only one point; a wall runs along at least 2";
        }

        for (int i = 1; i < wall.Along.Count; i++)
        {
            if (wall.Along[i - 1].DistanceTo(wall.Along[i]) <= PlanLimits.JoinMetres + PlanLimits.RoundingMetres)
            {
                return FormattableString.Invariant(
                    $"has no length between its points {i} and {i + 1}, both at {lengths.Place(wall.Along[i])}; ")
                    + "remove one or move it";
            }
        }

        double top = wall.TopMetres ?? heightMetres;
        if (wall.BaseMetres < 0 || top > heightMetres + PlanLimits.RoundingMetres || top - wall.BaseMetres <= 0)
        {
            return $"reaches from {lengths.Exact(wall.BaseMetres)} to {lengths.Exact(top)} above the floor; its bottom must "
                + $"be below its top and both within {lengths.Range(0, heightMetres)}, the level's height";
        }

        return null;
    }

    private static IEnumerable<WrittenWall> Stretches(WallDraft wall, double heightMetres)
    {
        double top = Math.Min(wall.TopMetres ?? heightMetres, heightMetres);
        bool isFull = wall.BaseMetres <= PlanLimits.RoundingMetres && heightMetres - top <= PlanLimits.RoundingMetres;
        IReadOnlyList<Point2> points = wall.Along;
        for (int i = 1; i < points.Count; i++)
        {
            string? name = wall.Name is null || points.Count == 2
                ? wall.Name
                : FormattableString.Invariant($"{wall.Name} {i}");
            yield return new WrittenWall(
                name, wall.Name, new Segment(points[i - 1], points[i]), wall.BaseMetres, top, isFull, wall.Material, wall.Mark);
        }
    }
}

/// <summary>One straight segment of a wall as written.</summary>
/// <param name="Name">Its name, numbered if the polyline has several segments; null if none was given.</param>
/// <param name="PolylineName">The name as written.</param>
/// <param name="Segment">Its position.</param>
/// <param name="BaseMetres">Bottom edge above the floor, metres.</param>
/// <param name="TopMetres">Top edge above the floor, metres.</param>
/// <param name="IsFullHeight">Whether it can close a room: it reaches from floor to ceiling.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Mark">Where it was written.</param>
internal sealed record WrittenWall(
    string? Name,
    string? PolylineName,
    Segment Segment,
    double BaseMetres,
    double TopMetres,
    bool IsFullHeight,
    Material Material,
    Mark Mark)
{
    /// <summary>Its name in a message.</summary>
    internal string Label(LengthFormat lengths) =>
        Name is null
            ? $"the {Material.Name} wall from {lengths.Place(Segment.Start)} to {lengths.Place(Segment.End)}"
            : $"wall {Quote.Of(Name)}";
}
