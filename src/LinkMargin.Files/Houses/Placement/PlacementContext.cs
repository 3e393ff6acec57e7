using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Houses.Levels;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Placement;

/// <summary>What spots, seats and fixtures are placed in: the levels with their plans, and the fixtures read so far.</summary>
internal sealed class PlacementContext(Source source, IReadOnlyList<LevelDraft> drafts, IReadOnlyList<Level> levels)
{
    private readonly Dictionary<string, Fixture> fixturesByName = [];
    private readonly Dictionary<string, int> levelsByName = drafts
        .Select((draft, index) => (draft.Name, index))
        .DistinctBy(level => level.Name)
        .ToDictionary(level => level.Name, level => level.index);

    /// <summary>The extent of each level's plan; null if not all of it could be read.</summary>
    private readonly (Point2 Least, Point2 Greatest)?[] extents = [.. drafts.Select(Extent)];

    /// <summary>The file.</summary>
    public Source Source { get; } = source;

    /// <summary>The fixtures read so far.</summary>
    public List<Fixture> Fixtures { get; } = [];

    /// <summary>The names of the fixtures read so far.</summary>
    public IReadOnlyDictionary<string, Fixture> FixturesByName => fixturesByName;

    /// <summary>The names of fixtures that could not be read; references to them are not checked.</summary>
    public HashSet<string> UnreadFixtures { get; } = [];

    /// <summary>Adds a fixture; of two with the same name, look-ups find the first.</summary>
    public void Add(Fixture fixture)
    {
        Fixtures.Add(fixture);
        fixturesByName.TryAdd(fixture.Name, fixture);
    }

    /// <summary>
    /// The level of a thing, as written; may be omitted if the house has only one. Null, with an error recorded, if it cannot be
    /// determined.
    /// </summary>
    public int? LevelOf(MappingReader group)
    {
        if (!group.Has("level") && drafts.Count == 1)
        {
            return 0;
        }

        return group.RequiredName("level") is { } name ? LevelNamed(name, group.MarkOf("level"), "level") : null;
    }

    /// <summary>The level with a name; null, with an error recorded, if there is none.</summary>
    public int? LevelNamed(string name, Mark mark, string label)
    {
        if (levelsByName.TryGetValue(name, out int index))
        {
            return index;
        }

        Source.Error(mark, $"{label}: no level is named {Quote.Of(name)}; {Source.Advice(name, levelsByName.Keys)}");
        return null;
    }

    /// <summary>Distance between two places, metres, each with its height above the floor of its level.</summary>
    public double DistanceOf(int level, Point2 at, double height, int otherLevel, Point2 otherAt, double otherHeight) =>
        at.At(levels[level].ElevationMetres + height).DistanceTo(otherAt.At(levels[otherLevel].ElevationMetres + otherHeight));

    /// <summary>The rooms of a level.</summary>
    public IReadOnlyList<Room> RoomsOf(int level) => levels[level].Rooms;

    /// <summary>Whether a level may have a room of this name that could not be read or laid out.</summary>
    public bool MayHaveRoom(int level, string name) =>
        extents[level] is null || drafts[level].Plan.Rooms.Any(room => room.Name == name);

    /// <summary>The name of a level.</summary>
    public string NameOf(int level) => drafts[level].Name;

    /// <summary>Floor to ceiling; null if it could not be read.</summary>
    public double? HeightOf(int level) => drafts[level].HeightMetres;

    /// <summary>Records an error if a height is above the ceiling.</summary>
    public void CheckHeight(int level, double height, Mark mark, string label)
    {
        if (HeightOf(level) is { } ceiling && height > ceiling + HouseLimits.SameHeight)
        {
            Source.Error(mark, $"{label}: {Source.Lengths.Exact(height)} is above the ceiling of the level {Quote.Of(NameOf(level))}; "
                + $"{Source.Lengths.Exact(0)} to {Source.Lengths.Exact(ceiling)} is allowed");
        }
    }

    /// <summary>Whether a place lies outside the extent of a level's plan; false if not all of the plan could be read.</summary>
    public bool IsBeyond(int level, Point2 place) =>
        extents[level] is { } extent
        && (place.X < extent.Least.X - HouseLimits.SameHeight
            || place.X > extent.Greatest.X + HouseLimits.SameHeight
            || place.Y < extent.Least.Y - HouseLimits.SameHeight
            || place.Y > extent.Greatest.Y + HouseLimits.SameHeight);

    /// <summary>The extent of a level's plan, for a message about a place outside it.</summary>
    public string ExtentOf(int level) => extents[level] is { } extent
        ? Source.Lengths.Extent(extent.Least, extent.Greatest)
        : throw new InvalidOperationException("Nothing lies beyond a level whose plan could not be read.");

    /// <summary>
    /// Checks the place of a person or thing: outside the level's plan is an error; in no room, or inside a wall, is a warning.
    /// </summary>
    public void CheckPlace(int level, Point2 place, double height, Mark mark, string what)
    {
        if (IsBeyond(level, place))
        {
            Source.Error(mark,
                $"{what} lies outside the level {Quote.Of(NameOf(level))}, which reaches {ExtentOf(level)}; "
                    + "fix 'at' or 'level'");
            return;
        }

        if (extents[level] is null)
        {
            return;
        }

        if (WallAt(level, place, height) is { } wall)
        {
            Source.Warning(mark, $"{what} is inside the wall {Quote.Of(wall.Name)}; move it into a room");
        }
        else if (levels[level].Rooms.Count > 0 && !levels[level].Rooms.Any(room => room.Outline.Contains(place)))
        {
            Source.Warning(mark, $"{what} is in no room of the level {Quote.Of(NameOf(level))}; check 'at'");
        }
    }

    /// <summary>The solid fixture a place lies in; null if there is none.</summary>
    public Fixture? SolidAt(int level, Point2 place, double height) =>
        Fixtures.Find(f => f.LevelIndex == level && !f.IsShell && f.Contains(place, height, -HouseLimits.SameHeight));

    private Wall? WallAt(int level, Point2 place, double height) => levels[level].Walls.FirstOrDefault(wall =>
        height > wall.BaseMetres
        && height < wall.TopMetres
        && Reach(wall, place) is { } along
        && !wall.Openings.Any(o =>
            along > o.OffsetMetres && along < o.OffsetMetres + o.WidthMetres
            && height > o.SillMetres && height < o.SillMetres + o.HeightMetres));

    private static (Point2 Least, Point2 Greatest)? Extent(LevelDraft level)
    {
        if (!level.IsOutlineKnown)
        {
            return null;
        }

        Point2[] corners = [.. level.Corners];
        return (
            new Point2(corners.Min(c => c.X), corners.Min(c => c.Y)),
            new Point2(corners.Max(c => c.X), corners.Max(c => c.Y)));
    }

    /// <summary>How far along a wall a place inside it is; null if it is not inside.</summary>
    private static double? Reach(Wall wall, Point2 place)
    {
        double length = wall.LengthMetres;
        if (length <= 0)
        {
            return null;
        }

        Point2 along = (1 / length) * (wall.End - wall.Start), from = place - wall.Start;
        double distance = Math.Abs(Point2.Cross(along, from)), at = Point2.Dot(along, from);
        double half = Math.Max(HouseLimits.ThinnestWall, wall.Material.ThicknessMetres ?? 0) / 2;
        return distance < half && at > 0 && at < length ? at : null;
    }
}
