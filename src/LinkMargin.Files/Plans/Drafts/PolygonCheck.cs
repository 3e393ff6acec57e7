using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using NetTopologySuite.Operation.Valid;
using NtsPolygon = NetTopologySuite.Geometries.Polygon;

namespace LinkMargin.Files.Plans.Drafts;

/// <summary>Checks whether written corners form a valid polygon, for rooms and for voids.</summary>
internal static class PolygonCheck
{
    /// <summary>
    /// The polygon without repeated corners; or null, with one error reported. <paramref name="what"/> is its name in the
    /// message, such as <c>room 'den'</c>.
    /// </summary>
    internal static Polygon? Check(
        string what, IReadOnlyList<Point2> corners, Mark mark, PlanProblems problems)
    {
        Point2[] distinct = Distinct(corners);
        if (Fault(distinct, problems.Lengths) is { } fault)
        {
            problems.Error(mark, $"{what} {fault}");
            return null;
        }

        return new Polygon(distinct);
    }

    /// <summary>What is wrong with a polygon of distinct corners, or null.</summary>
    internal static string? Fault(IReadOnlyList<Point2> corners, LengthFormat lengths)
    {
        if (corners.Count < 3)
        {
            return FormattableString.Invariant(
                $"has {corners.Count} different corners; it needs at least 3, and corners within {lengths.Fine(PlanLimits.JoinMetres)} count as one");
        }

        NtsPolygon polygon = NtsShapes.ToPolygon(corners);
        // The two halves of a bow tie cancel out, so the hull decides whether the corners lie on one line.
        if (polygon.ConvexHull().Area <= PlanLimits.JoinMetres * polygon.Length / 2)
        {
            return "encloses no area: its corners lie in one line; move at least one off it";
        }

        IsValidOp check = new(polygon);
        return check.IsValid
            ? null
            : $"crosses or touches itself near {lengths.Place(NtsShapes.ToPoint(check.ValidationError.Coordinate))}; "
                + "list its corners in order round the outline";
    }

    /// <summary>The corners without those that repeat the one before, including a repeated first corner at the end.</summary>
    internal static Point2[] Distinct(IReadOnlyList<Point2> corners)
    {
        List<Point2> kept = [];
        foreach (Point2 corner in corners)
        {
            if (kept.Count == 0 || kept[^1].DistanceTo(corner) > PlanLimits.JoinMetres + PlanLimits.RoundingMetres)
            {
                kept.Add(corner);
            }
        }

        while (kept.Count > 1 && kept[^1].DistanceTo(kept[0]) <= PlanLimits.JoinMetres + PlanLimits.RoundingMetres)
        {
            kept.RemoveAt(kept.Count - 1);
        }

        return [.. kept];
    }
}
