using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;
using NetTopologySuite.Algorithm;
using NetTopologySuite.Geometries;
using NetTopologySuite.Simplify;

namespace LinkMargin.Files.Plans.Rooms;

/// <summary>Checks written outlines and normalises them.</summary>
internal static class RoomShapes
{
    /// <summary>
    /// The rooms that are valid polygons. An invalid one is reported and omitted; the others stay in written order.
    /// </summary>
    internal static IReadOnlyList<RoomShape> From(
        IReadOnlyList<RoomDraft> drafts, PlanProblems problems)
    {
        List<RoomShape> shapes = [];
        foreach (RoomDraft draft in drafts)
        {
            if (PolygonCheck.Check($"room {Quote.Of(draft.Name)}", draft.Outline, draft.Mark, problems) is { } outline)
            {
                int index = shapes.Count;
                shapes.Add(new RoomShape(index, draft.Name, draft.Mark, RoomShape.EdgesOf(index, Straighten(outline.Corners))));
            }
        }

        return shapes;
    }

    /// <summary>
    /// The corners anticlockwise, without those in the middle of a straight wall. Starts at the westernmost corner, which is
    /// always a true corner.
    /// </summary>
    internal static Point2[] Straighten(IReadOnlyList<Point2> corners)
    {
        Coordinate[] ring = NtsShapes.ToRing(corners);
        int count = corners.Count;
        int first = Enumerable.Range(0, count).MinBy(i => (corners[i].X, corners[i].Y));
        int step = Orientation.IsCCW(ring) ? 1 : count - 1;
        Coordinate[] turned = [.. Enumerable.Range(0, count + 1).Select(i => ring[(first + (i * step)) % count])];
        Coordinate[] kept = DouglasPeuckerLineSimplifier.Simplify(turned, PlanLimits.JoinMetres);

        // A room barely wider than the tolerance can be simplified to nothing; it then keeps all its corners.
        Coordinate[] chosen = kept.Length < 4 ? turned : kept;
        return [.. chosen[..^1].Select(NtsShapes.ToPoint)];
    }
}
