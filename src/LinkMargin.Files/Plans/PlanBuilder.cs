using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Openings;
using LinkMargin.Files.Plans.Rooms;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Plans.Walls;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans;

/// <summary>Lays out a level: from the written plan to walls without duplicates, their openings, and every room.</summary>
internal static class PlanBuilder
{
    /// <summary>
    /// The plan of a level. Errors and warnings go to <paramref name="report"/>; after an error the plan is incomplete and only good
    /// for finding further errors. For nested rooms, the inner one comes first.
    /// </summary>
    internal static Plan Build(PlanDraft draft, PlanProblems report)
    {
        IReadOnlyList<RoomShape> written = RoomShapes.From(draft.Rooms, report);
        IReadOnlyList<WrittenWall> walls = WrittenWalls.From(draft, report);
        if (!IsBounded(draft, written, walls, report))
        {
            return new Plan([], []);
        }

        RoomOverlaps.Report(written, report);
        IReadOnlyList<RoomShape> joined = RoomJoiner.Join(written, [.. walls.Select(w => w.Segment)], report);
        walls = WrittenWallSnapper.Snap(walls, joined, report);
        PointIndex corners = new(PlanLimits.JoinMetres);
        foreach (Point2 corner in joined.SelectMany(r => r.Corners).Concat(
            walls.SelectMany(w => new[] { w.Segment.Start, w.Segment.End })))
        {
            corners.Add(corner);
        }

        IReadOnlyList<Segment> edges = RoomWalls.Distinct(joined, corners);
        WrittenWall[] full = [.. walls.Where(w => w.IsFullHeight)];
        IReadOnlyList<RoomShape> found = RoomFinder.Find(joined, [.. edges, .. full.Select(w => w.Segment)]);
        RoomShape[] rooms = [.. joined, .. found];
        new LooseEnds(full, edges, rooms).Report(report);
        ReportUnwritten(draft, found, report);
        new OutdoorStrips(joined, found, walls, report).Report();

        IReadOnlyList<Segment> roomWalls = RoomWalls.Less(edges, walls, corners);
        WallsBeside.Report(full, roomWalls, report);
        IReadOnlyList<LaidWall> laid = new WallLayout(draft, rooms, report).Lay(roomWalls, walls, corners);
        IReadOnlyList<Room> outlines = [.. rooms.Select(r => new Room(r.Name, new Polygon(r.Corners)))];
        if (!PlanSize.IsWithin(laid.Count, draft, report))
        {
            return new Plan(outlines, []);
        }

        OpeningSites sites = new(rooms, laid, FaultyRooms(draft, rooms), FaultyWalls(draft, walls), report);
        return new Plan(outlines, new OpeningPlacer(laid, sites, report).Place(draft.Openings));
    }

    /// <summary>Refuses a plan that would take too long, before any work is done on it.</summary>
    private static bool IsBounded(
        PlanDraft draft, IReadOnlyList<RoomShape> rooms, IReadOnlyList<WrittenWall> walls, PlanProblems report)
    {
        // At most two rooms share a wall, so a level has at least half as many walls as its rooms have edges.
        RoomEdge[] edges = [.. rooms.SelectMany(r => r.Edges)];
        return PlanSize.IsWithin(Math.Max(walls.Count, edges.Length / 2), draft, report)
            && PlanSize.IsSparse(
                "rooms", [.. rooms.Select(r => NtsShapes.ToPolygon(r.Corners).EnvelopeInternal)], draft, report)
            && PlanSize.IsSparse(
                "walls",
                [.. edges.Select(e => e.Segment).Concat(walls.Select(w => w.Segment)).Select(NtsShapes.EnvelopeOf)],
                draft,
                report)
            && WallCrossings.AreFew(rooms, walls, draft, report);
    }

    /// <summary>A region enclosed only by written rooms was probably forgotten.</summary>
    private static void ReportUnwritten(PlanDraft draft, IReadOnlyList<RoomShape> found, PlanProblems report)
    {
        if (draft.Walls.Count > 0)
        {
            return;
        }

        foreach (RoomShape room in found)
        {
            Polygon outline = new(room.Corners);
            string area = report.Lengths.ExactArea(outline.AreaSquareMetres);
            report.Warning(
                draft.Rooms[0].Mark,
                $"the rooms of level {Quote.Of(draft.LevelName)} enclose {area} between {report.Lengths.Place(outline.Least)} and "
                    + $"{report.Lengths.Place(outline.Greatest)} that belongs to no room of the file; it is called {Quote.Of(room.Name)} and its "
                    + "walls count as inner walls; add a room there to name it");
        }
    }

    private static HashSet<string> FaultyRooms(PlanDraft draft, IEnumerable<RoomShape> rooms) =>
        [.. draft.Rooms.Select(r => r.Name).Except(rooms.Select(r => r.Name))];

    private static HashSet<string> FaultyWalls(PlanDraft draft, IEnumerable<WrittenWall> walls) =>
        [.. draft.Walls.Select(w => w.Name).OfType<string>().Except(walls.Select(w => w.PolylineName).OfType<string>())];
}

/// <summary>One level's plan, laid out: walls without duplicates, openings in their walls, rooms written and found.</summary>
internal sealed record Plan(IReadOnlyList<Room> Rooms, IReadOnlyList<Wall> Walls);
