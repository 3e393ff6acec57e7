using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Levels;

/// <summary>Reads the rooms of one level.</summary>
internal sealed class RoomReader(Source source)
{
    /// <summary>The word for the outdoors in an opening's 'between'.</summary>
    public const string Outside = "outside";

    private readonly HashSet<string> unreadNames = [];
    private readonly HashSet<string> readNames = [];

    /// <summary>How many rooms could not be read.</summary>
    public int Unread { get; private set; }

    /// <summary>Reads all rooms that are readable.</summary>
    public IReadOnlyList<RoomDraft> ReadAll(MappingReader level)
    {
        Names names = new(source, "a room on this level");
        List<RoomDraft> rooms = [];
        IReadOnlyList<Node> items = level.OptionalItems("rooms");
        Unread = level.Has("rooms") ? items.Count : 0;
        foreach (Node item in items)
        {
            if (MappingReader.Open(source, item, "a room", HouseKeys.Room) is not { } group)
            {
                continue;
            }

            string? name = ReadName(group, names);
            IReadOnlyList<Point2>? outline = Outline(group);
            if (name is not null && outline is not null)
            {
                readNames.Add(name);
                rooms.Add(new RoomDraft(name, outline, group.Mark));
                Unread--;
            }
            else if (name is not null)
            {
                unreadNames.Add(name);
            }
        }

        return rooms;
    }

    /// <summary>
    /// Whether a name may be that of a room that could not be read. Anything that refers to such a name is not checked, so that one
    /// error is not reported twice.
    /// </summary>
    public bool MayBeUnread(string name) =>
        unreadNames.Contains(name) || (Unread > unreadNames.Count && name != Outside && !readNames.Contains(name));

    private string? ReadName(MappingReader group, Names names)
    {
        if (group.RequiredName("name") is not { } name)
        {
            return null;
        }

        if (name == Outside)
        {
            source.Error(group.MarkOf("name"), "a room cannot be named 'outside', which stands for no room; give it another name");
            return null;
        }

        names.Take(name, group.MarkOf("name"));
        return name;
    }

    private IReadOnlyList<Point2>? Outline(MappingReader group)
    {
        bool hasOutline = group.Has("outline"), hasRectangle = group.Has("corner") || group.Has("size");
        if (hasOutline == hasRectangle)
        {
            source.Error(group.Mark, hasOutline
                ? "a room has either 'corner' and 'size' or an 'outline', not both; remove one"
                : "a room needs 'corner' and 'size', or an 'outline'");
            return null;
        }

        if (hasRectangle)
        {
            return PlaceReader.Rectangle(group);
        }

        return group.Optional("outline") is { } node ? PlaceReader.Line(source, node, "outline", 3) : null;
    }
}
