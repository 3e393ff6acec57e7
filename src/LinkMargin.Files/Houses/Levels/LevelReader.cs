using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Levels;

/// <summary>Reads the levels of a house.</summary>
internal sealed class LevelReader(Source source, MaterialReader materials)
{
    /// <summary>Reads all levels, lowest first.</summary>
    public List<LevelDraft> ReadAll(MappingReader file)
    {
        Names names = new(source, "a level");
        List<LevelDraft> levels = [];
        List<MappingReader> groups = [.. file.RequiredGroups("levels", "a level", HouseKeys.Level)];
        TooMany.Check(source, file, "levels", groups.Count, HouseLimits.MostLevels);
        foreach (MappingReader group in groups.Take(HouseLimits.MostLevels))
        {
            bool isTop = group == groups[^1];
            levels.Add(Read(group, names, isTop, FormattableString.Invariant($"level {levels.Count + 1}")));
        }

        return levels;
    }

    private LevelDraft Read(MappingReader group, Names names, bool isTop, string fallbackName)
    {
        string? name = group.RequiredName("name");
        if (name is not null)
        {
            names.Take(name, group.MarkOf("name"));
        }

        double? height = group.RequiredLength("height", HouseLimits.LevelHeight);

        // If the height is wrong, nothing is reported as too high for it.
        double roof = height ?? HouseLimits.LevelHeight.Greatest;
        RoomReader rooms = new(source);
        IReadOnlyList<RoomDraft> roomDrafts = rooms.ReadAll(group);
        WallReader walls = new(source, materials, roof);
        IReadOnlyList<WallDraft> wallDrafts = walls.ReadAll(group);
        OpeningReader openings = new(source, materials, roof, rooms);
        if (!group.Has("rooms") && !group.Has("walls"))
        {
            source.Error(group.Mark,
                $"the level {Quote.Of(name ?? fallbackName)} has neither rooms nor walls; give it 'rooms', 'walls' or both");
        }

        PlanDraft plan = new(
            name ?? fallbackName,
            roof,
            materials.OptionalPanel(group, "outer"),
            materials.OptionalPanel(group, "inner"),
            roomDrafts,
            wallDrafts,
            openings.ReadAll(group));
        bool isOutlineKnown = rooms.Unread == 0 && walls.Unread == 0 && plan.Rooms.Count + plan.Walls.Count > 0;
        double? elevation = group.OptionalLength("elevation", HouseLimits.Elevation);
        return new LevelDraft(
            plan.LevelName, group.Mark, plan, height, elevation, group.MarkOf("elevation"), ReadAbove(group, plan, isTop, isOutlineKnown))
        {
            IsElevationUnread = group.Has("elevation") && elevation is null,
            IsOutlineKnown = isOutlineKnown,
        };
    }

    private FloorAbove? ReadAbove(MappingReader group, PlanDraft plan, bool isTop, bool isOutlineKnown)
    {
        if (!group.Has("above"))
        {
            if (!isTop)
            {
                source.Error(group.Mark,
                    $"the level {Quote.Of(plan.LevelName)} has another level above it but does not say what is between them; "
                        + $"add 'above: {{build-up: ...}}', {materials.BuildUpExamples}");
            }

            return null;
        }

        FloorAbove? above = new FloorAboveReader(source, materials).Read(group, plan, isOutlineKnown);
        if (isTop)
        {
            source.Warning(group.MarkOf("above"), $"no level is above {Quote.Of(plan.LevelName)}, so 'above' is ignored");
            return null;
        }

        return above;
    }
}

/// <summary>A level as written, before its plan is laid out and its height in the house is known.</summary>
/// <param name="Name">Its name; a description if none could be read.</param>
/// <param name="Mark">Where it starts.</param>
/// <param name="Plan">Its plan as written.</param>
/// <param name="HeightMetres">Floor to ceiling; null if it could not be read.</param>
/// <param name="ElevationMetres">Its floor above the file's own zero; null if not given.</param>
/// <param name="ElevationMark">Where the elevation is written, or where the level starts.</param>
/// <param name="Above">What lies above it; null if nothing is written or it could not be read.</param>
internal sealed record LevelDraft(
    string Name,
    Mark Mark,
    PlanDraft Plan,
    double? HeightMetres,
    double? ElevationMetres,
    Mark ElevationMark,
    FloorAbove? Above)
{
    /// <summary>Whether its elevation is written but could not be read.</summary>
    public bool IsElevationUnread { get; init; }

    /// <summary>Whether all its rooms and walls could be read, so that a place can be known to lie outside.</summary>
    public bool IsOutlineKnown { get; init; }

    /// <summary>Every corner of its rooms and walls.</summary>
    public IEnumerable<Point2> Corners => Plan.Rooms.SelectMany(r => r.Outline).Concat(Plan.Walls.SelectMany(w => w.Along));
}
