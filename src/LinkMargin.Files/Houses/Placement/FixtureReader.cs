using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Placement;

/// <summary>Reads the fixtures of a house into its placement context.</summary>
internal sealed class FixtureReader(PlacementContext placement, MaterialReader materials)
{
    // The word for a side without a panel.
    private const string NoPanel = "none";

    private readonly Source source = placement.Source;

    /// <summary>Reads all fixtures that are readable.</summary>
    public void ReadAll(MappingReader file)
    {
        Names names = new(source, "a fixture");
        List<MappingReader> groups = [.. file.OptionalGroups("fixtures", "a fixture", HouseKeys.Fixture)];
        TooMany.Check(source, file, "fixtures", groups.Count, HouseLimits.MostFixtures);
        foreach (MappingReader group in groups.Take(HouseLimits.MostFixtures))
        {
            string? name = group.RequiredName("name");
            if (name is not null)
            {
                names.Take(name, group.MarkOf("name"));
            }

            if (Read(group, name ?? "a fixture") is { } fixture && name is not null)
            {
                placement.Add(fixture);
            }
            else if (name is not null)
            {
                placement.UnreadFixtures.Add(name);
            }
        }
    }

    private Fixture? Read(MappingReader group, string name)
    {
        int? level = placement.LevelOf(group);
        Material material = materials.Required(group, "material");
        double turn = group.OptionalNumber("turn", Quantity.Degrees, HouseLimits.Angle) ?? 0;
        (Point2 Least, Point2 Greatest)? box = Box(group);
        ShellSides? shell = Shell(group);
        if (level is not { } index || Heights(group, index) is not { } heights || box is not { } corners)
        {
            return null;
        }

        Fixture fixture = new(
            name,
            index,
            0.5 * (corners.Least + corners.Greatest),
            corners.Greatest.X - corners.Least.X,
            corners.Greatest.Y - corners.Least.Y,
            turn,
            heights.From,
            heights.To,
            material)
        {
            IsShell = shell is not null,
            OpenSides = shell?.Open ?? BoxSides.None,
            SideMaterials = shell?.Materials ?? [],
        };
        if (fixture.Corners().All(corner => placement.IsBeyond(index, corner)))
        {
            source.Warning(group.MarkOf("box"), $"the fixture {Quote.Of(name)} lies outside the level {Quote.Of(placement.NameOf(index))}, which reaches {placement.ExtentOf(index)}; check 'box'");
        }

        return fixture;
    }

    private (Point2 Least, Point2 Greatest)? Box(MappingReader group)
    {
        const string Form = "[x0, y0, x1, y1], two opposite corners of its footprint";
        if (group.Required("box") is not { } node || PlaceReader.Numbers(source, node, "box", 4, Form) is not { } items)
        {
            return null;
        }

        string[] labels = ["box (x0)", "box (y0)", "box (x1)", "box (y1)"];
        double?[] read = [.. items.Select((item, i) => ValueReader.Length(source, item, labels[i], HouseLimits.Coordinate))];
        if (read is not [{ } x0, { } y0, { } x1, { } y1])
        {
            return null;
        }

        double width = Math.Abs(x1 - x0), depth = Math.Abs(y1 - y0);
        if (!HouseLimits.FixtureSide.Contains(width) || !HouseLimits.FixtureSide.Contains(depth))
        {
            source.Error(node.Mark, 
                $"box: its footprint is {source.Lengths.Show(HouseLimits.FixtureSide, width)} by {source.Lengths.Show(HouseLimits.FixtureSide, depth)}; "
                    + $"each side may be {source.Lengths.Allowed(HouseLimits.FixtureSide)}, and the form is {Form}");
            return null;
        }

        return (new Point2(Math.Min(x0, x1), Math.Min(y0, y1)), new Point2(Math.Max(x0, x1), Math.Max(y0, y1)));
    }

    private (double From, double To)? Heights(MappingReader group, int level)
    {
        double? from = group.Has("from") ? group.OptionalLength("from", HouseLimits.HeightOverFloor) : 0;
        double? to = group.Has("to")
            ? group.OptionalLength("to", HouseLimits.HeightOverFloor)
            : placement.HeightOf(level) ?? HouseLimits.LevelHeight.Greatest;
        if (from is not { } bottom || to is not { } top)
        {
            return null;
        }

        if (top - bottom < HouseLimits.FixtureSide.Least)
        {
            source.Error(group.MarkOf(group.Has("to") ? "to" : "from"), 
                $"the top of this fixture, {source.Lengths.Exact(top)}, is not above its underside, {source.Lengths.Exact(bottom)}; "
                    + "both are measured from the floor");
            return null;
        }

        placement.CheckHeight(level, top, group.MarkOf("to"), "to");
        return (bottom, Math.Min(top, placement.HeightOf(level) ?? top));
    }

    // The sides as written; null for a solid fixture.
    private ShellSides? Shell(MappingReader group)
    {
        BoxSides front = group.Optional("front") is { } node
            && ValueReader.TryChoose(source, node, "front", Sides.OfCompass, "a side for the front", null, out BoxSides named)
                ? named
                : BoxSides.South;
        IReadOnlyDictionary<string, BoxSides> words = Sides.OfFixture(front);
        var sides = new ShellSides();
        foreach (Node item in group.OptionalItems("open"))
        {
            if (ValueReader.TryChoose(source, item, "open", words, "a side of a fixture", null, out BoxSides side))
            {
                sides.Open |= side;
            }
        }

        ReadSides(group, words, sides);
        bool isWritten = group.Has("open") || group.Has("sides");
        bool? shell = group.OptionalFlag("shell");
        if (shell == false && isWritten)
        {
source.Error(group.MarkOf("shell"), group.Has("open")
                ? "a fixture with open sides is a shell; remove 'shell: false' or 'open'"
                : "a fixture with 'sides' is a shell; remove 'shell: false' or 'sides'");
        }

        return shell == true || isWritten ? sides : null;
    }

    // Each side may be given once: by its position as seen from the front, or by compass.
    private void ReadSides(MappingReader group, IReadOnlyDictionary<string, BoxSides> words, ShellSides sides)
    {
        if (group.OptionalGroup("sides", "the sides of a fixture", HouseKeys.FixtureSides) is not { } panels)
        {
            return;
        }

        var written = new Dictionary<BoxSides, string>();
        foreach (string word in HouseKeys.FixtureSides.Where(panels.Has))
        {
            BoxSides side = words[word];
            bool isNone = panels.Optional(word) is ScalarNode { Text: NoPanel };
            Material? material = isNone ? null : materials.Optional(panels, word);
            if (!written.TryAdd(side, word))
            {
                source.Error(panels.MarkOf(word), $"{word}: '{written[side]}' already names this side; remove one of the two");
            }
            else if (isNone)
            {
                sides.Open |= side;
            }
            else if (material is not null && (sides.Open & side) != 0)
            {
                source.Error(panels.MarkOf(word), $"{word}: 'open' already says that this side has no panel; remove it from one of the two");
            }
            else if (material is not null)
            {
                sides.Materials[side] = material;
            }
        }
    }

    // The sides of a shell that have no panel or another material.
    private sealed class ShellSides
    {
        internal BoxSides Open { get; set; }

        internal Dictionary<BoxSides, Material> Materials { get; } = [];
    }
}
