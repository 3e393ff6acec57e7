using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Plans.Rooms;

/// <summary>Rebuilds a room whose edges were moved to new lines: each corner is where its two edges' lines now meet.</summary>
internal static class RoomMover
{
    /// <summary>Lines that meet at less than this angle meet too far away; a short step connects them instead.</summary>
    private const double LeastCornerDegrees = 15;

    private static readonly double LeastCornerSine = Math.Sin(LeastCornerDegrees * Math.PI / 180);

    /// <summary>
    /// The room with its edges on their lines (<paramref name="lineOf"/> gives null for an edge that stays); or null if the
    /// room would fold over.
    /// </summary>
    internal static RoomShape? Move(RoomShape room, Func<RoomEdge, Segment?> lineOf)
    {
        int count = room.Edges.Count;
        Segment?[] lines = [.. room.Edges.Select(lineOf)];
        if (Array.TrueForAll(lines, l => l is null))
        {
            return room;
        }

        Point2[][] corners = [.. Enumerable.Range(0, count).Select(i => Corner(room, lines, i))];
        List<RoomEdge> edges = [];
        for (int i = 0; i < count; i++)
        {
            if (corners[i] is [Point2 before, Point2 after])
            {
                Segment step = new(before, after);
                edges.Add(new RoomEdge(room.Index, step, step));
            }

            RoomEdge old = room.Edges[i];
            Segment moved = new(corners[i][^1], corners[(i + 1) % count][0]);
            double length = Point2.Dot(moved.End - moved.Start, old.Segment.Direction);
            if (length < -PlanLimits.JoinMetres)
            {
                return null;
            }

            // A short step between two edges that are now on one line disappears.
            if (length > PlanLimits.JoinMetres)
            {
                edges.Add(new RoomEdge(room.Index, moved, old.Written));
            }
        }

        return edges.Count >= 3 && PolygonCheck.Fault([.. edges.Select(e => e.Segment.Start)], LengthFormat.Metric) is null ? room with { Edges = edges } : null;
    }

    /// <summary>The corner at the start of an edge: one point, or two if a step connects nearly parallel lines.</summary>
    private static Point2[] Corner(RoomShape room, Segment?[] lines, int i)
    {
        int before = (i + lines.Length - 1) % lines.Length;
        Point2 corner = room.Edges[i].Segment.Start;
        if (lines[before] is null && lines[i] is null)
        {
            return [corner];
        }

        Segment a = lines[before] ?? room.Edges[before].Segment, b = lines[i] ?? room.Edges[i].Segment;
        double sine = Point2.Cross(a.Direction, b.Direction);
        if (Math.Abs(sine) >= LeastCornerSine)
        {
            return [a.PointAt(Point2.Cross(b.Start - a.Start, b.Direction) / sine)];
        }

        (Point2 onA, Point2 onB) = (a.Foot(corner), b.Foot(corner));
        return onA.DistanceTo(onB) <= PlanLimits.JoinMetres ? [onB] : [onA, onB];
    }
}
