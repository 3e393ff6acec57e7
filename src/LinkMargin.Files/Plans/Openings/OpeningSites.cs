using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Rooms;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Plans.Walls;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans.Openings;

/// <summary>Finds the stretches of wall that an opening's written place refers to.</summary>
internal sealed class OpeningSites
{
    /// <summary>The word in a file for the outdoor side of an outer wall.</summary>
    internal const string Outside = "outside";

    private readonly IReadOnlyList<RoomShape> rooms;
    private readonly IReadOnlyList<LaidWall> walls;
    private readonly HashSet<string> faultyRooms;
    private readonly HashSet<string> faultyWalls;
    private readonly PlanProblems problems;
    private readonly Dictionary<string, int> roomByName = [];
    private readonly ILookup<(int, int), OpeningSite> byRooms;
    private readonly ILookup<RoomEdge, OpeningSite> byEdge;
    private readonly ILookup<string, OpeningSite> byWallName;

    /// <summary>
    /// Takes the level's rooms and walls. The names in the two sets were written, but with errors already reported; an
    /// opening that uses one is skipped.
    /// </summary>
    internal OpeningSites(
        IReadOnlyList<RoomShape> rooms,
        IReadOnlyList<LaidWall> walls,
        HashSet<string> faultyRooms,
        HashSet<string> faultyWalls,
        PlanProblems problems)
    {
        this.rooms = rooms;
        this.walls = walls;
        this.faultyRooms = faultyRooms;
        this.faultyWalls = faultyWalls;
        this.problems = problems;
        foreach (RoomShape room in rooms)
        {
            roomByName.TryAdd(room.Name, room.Index);
        }

        (WallStretch Stretch, OpeningSite Site)[] stretches =
        [
            .. walls.SelectMany((wall, i) =>
                wall.Stretches.Select(s => (s, new OpeningSite(i, s.ClearIn(wall.Segment), 0)))),
        ];
        byRooms = stretches.ToLookup(s => s.Stretch.Rooms, s => s.Site);
        byEdge = stretches
            .SelectMany(s => new[] { s.Stretch.Left, s.Stretch.Right }.OfType<RoomEdge>().Select(e => (Edge: e, s.Site)))
            .ToLookup(s => s.Edge, s => s.Site);
        byWallName = walls
            .SelectMany((wall, i) => new[] { wall.Name, wall.PolylineName }.OfType<string>().Distinct()
                .Select(name => (Name: name, Site: WholeOf(i))))
            .ToLookup(s => s.Name, s => s.Site);
    }

    /// <summary>The stretches that a place refers to, at least one; or null if an error was reported.</summary>
    internal IReadOnlyList<OpeningSite>? Find(OpeningDraft opening, string label) => opening.Place switch
    {
        OpeningPlace.Between between => Between(between, opening, label),
        OpeningPlace.SideOf side => SideOf(side, opening, label),
        OpeningPlace.InWall inWall => InWall(inWall, opening, label),
        _ => throw new ArgumentOutOfRangeException(nameof(opening), opening.Place, "Not a known kind of place."),
    };

    private OpeningSite WholeOf(int wall)
    {
        // A wall of a single room has one stretch, and people measure along its clear part; a written wall is used as written.
        LaidWall laid = walls[wall];
        Span whole = new(0, laid.Segment.Length);
        return laid.Stretches is [{ } only] && only.Span == whole
            ? new OpeningSite(wall, only.ClearIn(laid.Segment), 0)
            : new OpeningSite(wall, whole, 0);
    }

    private OpeningSite[]? Between(OpeningPlace.Between place, OpeningDraft opening, string label)
    {
        if (RoomNamed(place.RoomA, opening, label) is not { } a || RoomNamed(place.RoomB, opening, label) is not { } b)
        {
            return null;
        }

        if (a == b)
        {
            problems.Error(opening.Mark, $"{label} is between {Quote.Of(place.RoomA)} and itself; name two different rooms");
            return null;
        }

        OpeningSite[] sites = [.. byRooms[a < b ? (a, b) : (b, a)]];
        if (sites.Length > 0)
        {
            return sites;
        }

        int room = Math.Max(a, b);
        string[] touching =
        [
            .. walls.SelectMany(w => w.Stretches.Select(s => s.Rooms))
                .Where(r => r.Low == room || r.High == room)
                .Select(r => r.Low == room ? r.High : r.Low)
                .Distinct()
                .Order()
                .Select(NameOf),
        ];
        problems.Error(
            opening.Mark,
            $"{label}: {Quote.Of(place.RoomA)} and {Quote.Of(place.RoomB)} share no wall on this level; "
                + $"{Quote.Of(NameOf(room))} touches {PlanText.List(touching)}; name two rooms that touch");
        return null;
    }

    private List<OpeningSite>? SideOf(OpeningPlace.SideOf place, OpeningDraft opening, string label)
    {
        if (place.Room == Outside)
        {
            problems.Error(opening.Mark, $"{label} is on a side of 'outside', which has none; name the room it belongs to");
            return null;
        }

        if (RoomNamed(place.Room, opening, label) is not { } room)
        {
            return null;
        }

        // On a north or south side 'at' is measured from the west, on an east or west side from the south.
        bool isFromWest = place.Side is PlanSide.North or PlanSide.South;
        IEnumerable<RoomEdge> edges = rooms[room].Edges
            .Where(e => e.Faces(place.Side))
            .OrderBy(e => isFromWest ? LeastX(e.Segment) : LeastY(e.Segment))
            .ThenBy(e => isFromWest ? LeastY(e.Segment) : LeastX(e.Segment));
        List<OpeningSite> sites = [];
        double before = 0;
        foreach (RoomEdge edge in edges)
        {
            Segment written = edge.Written;
            bool isBackward = isFromWest ? written.End.X < written.Start.X : written.End.Y < written.Start.Y;
            Segment side = isBackward ? written.Reversed : written;
            foreach (OpeningSite site in byEdge[edge])
            {
                Segment wall = walls[site.Wall].Segment;
                double a = side.Along(wall.PointAt(site.Clear.From)), b = side.Along(wall.PointAt(site.Clear.To));
                sites.Add(site with { SideFromMetres = before + Math.Min(a, b) });
            }

            before += written.Length;
        }

        if (sites.Count == 0)
        {
            problems.Error(
                opening.Mark,
                $"{label}: no wall of {Quote.Of(place.Room)} faces {PlanText.Side(place.Side)}; name another side, or "
                    + "name the wall with 'wall'");
            return null;
        }

        return sites;
    }

    private OpeningSite[]? InWall(OpeningPlace.InWall place, OpeningDraft opening, string label)
    {
        OpeningSite[] sites = [.. byWallName[place.Wall]];
        if (sites.Length > 0 || faultyWalls.Contains(place.Wall))
        {
            return sites.Length > 0 ? sites : null;
        }

        Unknown(opening, label, "wall", place.Wall, [.. byWallName.Select(g => g.Key)]);
        return null;
    }

    private int? RoomNamed(string name, OpeningDraft opening, string label)
    {
        if (name == Outside)
        {
            return -1;
        }

        if (roomByName.TryGetValue(name, out int room))
        {
            return room;
        }

        if (!faultyRooms.Contains(name))
        {
            Unknown(opening, label, "room", name, [.. roomByName.Keys, .. faultyRooms, Outside]);
        }

        return null;
    }

    private void Unknown(OpeningDraft opening, string label, string what, string name, IReadOnlyCollection<string> known) =>
        problems.Error(
            opening.Mark, $"{label}: this level has no {what} {Quote.Of(name)}; {NearestWord.Advice(name, known)}");

    private string NameOf(int room) => room < 0 ? Outside : rooms[room].Name;

    private static double LeastX(Segment s) => Math.Min(s.Start.X, s.End.X);

    private static double LeastY(Segment s) => Math.Min(s.Start.Y, s.End.Y);
}

/// <summary>A stretch of wall that can hold an opening.</summary>
/// <param name="Wall">Position of the wall among the level's walls.</param>
/// <param name="Clear">The stretch, metres from the wall's start.</param>
/// <param name="SideFromMetres">
/// Where the stretch starts on the scale of <c>at</c>: 0 for a single stretch, more if a side has several.
/// </param>
internal readonly record struct OpeningSite(int Wall, Span Clear, double SideFromMetres)
{
    /// <summary>The values of <c>at</c> that put an opening of this width inside; a negative length means none do.</summary>
    internal Span AtRange(double widthMetres) => new(SideFromMetres, SideFromMetres + Clear.Length - widthMetres);
}
