using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Changes;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Saving;

/// <summary>Writes walls of another material into the text of a level. A wall that comes from rooms gets a line of its own.</summary>
internal sealed class WallTexts(TextSurgery surgery, FileLengths lengths, int level)
{
    private const string Key = "walls";

    // Points closer than this are one corner of a plan.
    private const double SameMetres = 0.03;

    private TextGroup Level => surgery.Root.Listed("levels").ElementAt(level);

    /// <summary>Writes those with another material.</summary>
    public void Write(Level was, Level now)
    {
        foreach (Wall wall in was.Walls.Zip(now.Walls).Where(pair => pair.First.Material.Name != pair.Second.Material.Name).Select(pair => pair.Second))
        {
            if (NodeOf(was, wall) is { } node)
            {
                if (node.ValueOf("material") != wall.Material.Name)
                {
                    surgery.Set(node, "material", YamlWord.Of(wall.Material.Name));
                }
            }
            else
            {
                surgery.Add(Level, Key, $"{{along: [{Place(wall.Start)}, {Place(wall.End)}], material: {YamlWord.Of(wall.Material.Name)}}}");
            }
        }
    }

    private string Place(Point2 at) => $"[{lengths.Text(at.X, "0")}, {lengths.Text(at.Y, "0")}]";

    // Found by its name, by the name of the line it is a stretch of, or, without a name, by its position.
    private TextGroup? NodeOf(Level was, Wall wall)
    {
        TextGroup[] nodes = [.. Level.Listed(Key)];
        string line = WallLine.NamesOf(was.Walls, wall.Name).Count > 1 ? wall.Name[..wall.Name.LastIndexOf(' ')] : wall.Name;
        return nodes.FirstOrDefault(node => node.ValueOf("name") is { } name && (NameText.Normal(name) == wall.Name || NameText.Normal(name) == line))
            ?? nodes.FirstOrDefault(node => node.Of("name") is null && Runs(node, wall));
    }

    private bool Runs(TextGroup node, Wall wall)
    {
        if (node.Of("along")?.Value is not TextList { Items: { Count: > 1 } items })
        {
            return false;
        }

        Point2[] points = [.. items.OfType<TextList>().Where(item => item.Items is [TextScalar, TextScalar])
            .Select(item => new Point2(lengths.Parsed(((TextScalar)item.Items[0]).Value), lengths.Parsed(((TextScalar)item.Items[1]).Value)))];
        return points.Zip(points.Skip(1)).Any(stretch =>
            (Near(stretch.First, wall.Start) && Near(stretch.Second, wall.End)) || (Near(stretch.First, wall.End) && Near(stretch.Second, wall.Start)));
    }

    private static bool Near(Point2 a, Point2 b) => a.DistanceTo(b) < SameMetres;
}
