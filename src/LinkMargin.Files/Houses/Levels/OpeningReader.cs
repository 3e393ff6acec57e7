using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Levels;

/// <summary>Reads the doors, windows and gaps of one level.</summary>
internal sealed class OpeningReader(Source source, MaterialReader materials, double levelHeight, RoomReader rooms)
{
    private static readonly string[] Ways = ["between", "room", "wall"];

    private readonly Names names = new(source, "a door, window or gap on this level");

    /// <summary>Reads every opening that is readable and whose rooms are.</summary>
    public IReadOnlyList<OpeningDraft> ReadAll(MappingReader level)
    {
        List<OpeningDraft?> openings =
        [
            .. level.OptionalGroups("doors", "a door", HouseKeys.Door).Select(Door),
            .. level.OptionalGroups("windows", "a window", HouseKeys.Window).Select(Window),
            .. level.OptionalGroups("gaps", "a gap", HouseKeys.Gap).Select(Gap),
        ];
        return [.. openings.OfType<OpeningDraft>()];
    }

    private OpeningDraft? Door(MappingReader group) =>
        Read(
            group,
            OpeningKind.Door,
            group.OptionalLength("width", HouseLimits.OpeningWidth) ?? HouseLimits.DoorWidth,
            0,
            group.OptionalLength("height", HouseLimits.PanelHeight) ?? Math.Min(HouseLimits.DoorHeight, levelHeight),
            materials.RequiredPanel(group, "material"),
            group.OptionalFlag("open") ?? false);

    private OpeningDraft? Window(MappingReader group)
    {
        double sill = group.OptionalLength("sill", HouseLimits.HeightOverFloor) ?? HouseLimits.WindowSill;
        return Read(
            group,
            OpeningKind.Window,
            group.RequiredLength("width", HouseLimits.OpeningWidth) ?? HouseLimits.OpeningWidth.Least,
            sill,
            group.OptionalLength("height", HouseLimits.PanelHeight) ?? Math.Min(HouseLimits.WindowHeight, levelHeight - sill),
            materials.RequiredPanel(group, "material"),
            group.OptionalFlag("open") ?? false);
    }

    private OpeningDraft? Gap(MappingReader group)
    {
        double sill = group.OptionalLength("sill", HouseLimits.HeightOverFloor) ?? 0;
        return Read(
            group,
            OpeningKind.Gap,
            group.RequiredLength("width", HouseLimits.OpeningWidth) ?? HouseLimits.OpeningWidth.Least,
            sill,
            group.OptionalLength("height", HouseLimits.PanelHeight) ?? levelHeight - sill,
            null,
            true);
    }

    private OpeningDraft? Read(
        MappingReader group, OpeningKind kind, double width, double sill, double height, Material? leaf, bool isOpen)
    {
        string? name = group.OptionalName("name");
        if (name is not null)
        {
            names.Take(name, group.MarkOf("name"));
        }

        double? at = group.OptionalLength("at", HouseLimits.OpeningAt);
        OpeningPlace? place = Place(group);
        if (height <= 0 || sill + height > levelHeight + HouseLimits.SameHeight)
        {
            string keys = kind == OpeningKind.Door ? "'height'" : "'sill', 'height'";
            source.Error(group.MarkOf(group.Has("height") ? "height" : "sill"), 
                $"{group.What} reaches {source.Lengths.Exact(Math.Max(sill, sill + height))} above the floor, "
                    + $"and the level is {source.Lengths.Exact(levelHeight)} high; fix {keys} or the level's height");
            return null;
        }

        return place is null
            ? null
            : new OpeningDraft(name, kind, place, at, width, sill, Math.Min(height, levelHeight - sill), leaf, isOpen, group.Mark);
    }

    private OpeningPlace? Place(MappingReader group)
    {
        string[] ways = [.. Ways.Where(group.Has)];
        if (ways.Length == 0 && group.Has("side"))
        {
            source.Error(group.Mark, $"{group.What} has a 'side' but no 'room'");
            return null;
        }

        if (ways.Length != 1)
        {
            source.Error(group.Mark, ways.Length == 0
                ? $"{group.What} needs a place: 'between: [room, room]', 'room' with 'side', or 'wall'"
                : $"{group.What} gives more than one position ({string.Join(", ", ways)}); keep one");
            return null;
        }

        if (group.Has("side") && ways[0] != "room")
        {
            source.Error(group.MarkOf("side"), $"'side' goes with 'room', not with '{ways[0]}'; remove one");
            return null;
        }

        return ways[0] switch
        {
            "between" => Between(group),
            "room" => SideOf(group),
            _ => group.OptionalName("wall") is { } wall ? new OpeningPlace.InWall(wall) : null,
        };
    }

    private OpeningPlace.Between? Between(MappingReader group)
    {
        if (group.Optional("between") is not { } node)
        {
            return null;
        }

        if (node is not SequenceNode { Items: [var first, var second] })
        {
            source.Error(node.Mark,
                $"between: write the two rooms it joins, [room, room]; '{RoomReader.Outside}' stands for no room");
            return null;
        }

        string? a = ValueReader.Name(source, first, "between"), b = ValueReader.Name(source, second, "between");
        if (a is null || b is null || rooms.MayBeUnread(a) || rooms.MayBeUnread(b))
        {
            return null;
        }

        if (a == b)
        {
            source.Error(node.Mark,
                $"between: {Quote.Of(a)} appears twice; write two different rooms, or '{RoomReader.Outside}' for one");
            return null;
        }

        return new OpeningPlace.Between(a, b);
    }

    private OpeningPlace.SideOf? SideOf(MappingReader group)
    {
        string? room = group.RequiredName("room");
        PlanSide? side = group.RequiredWord("side", Sides.OfPlan, "a side of a room");
        return room is null || side is null || rooms.MayBeUnread(room) ? null : new OpeningPlace.SideOf(room, side.Value);
    }
}
