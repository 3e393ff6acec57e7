using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Levels;

/// <summary>Reads what lies between a level and the one above.</summary>
internal sealed class FloorAboveReader(Source source, MaterialReader materials)
{
    /// <summary>Reads it; null if it is not written or the build-up could not be read.</summary>
    /// <param name="level">The level.</param>
    /// <param name="plan">What was read of its plan.</param>
    /// <param name="isOutlineKnown">Whether the plan is complete.</param>
    public FloorAbove? Read(MappingReader level, PlanDraft plan, bool isOutlineKnown)
    {
        if (level.OptionalGroup("above", "'above'", HouseKeys.Above) is not { } above)
        {
            return null;
        }

        FloorBuildUp? buildUp = materials.RequiredBuildUp(above, "build-up");
        List<Polygon> voids = Voids(above, plan, isOutlineKnown);
        WrittenJoists? written = Joists(above);
        return buildUp is null ? null : new FloorAbove(buildUp, Layout(buildUp, written, above, plan), voids);
    }

    private List<Polygon> Voids(MappingReader above, PlanDraft plan, bool isOutlineKnown)
    {
        List<Polygon> voids = [];
        foreach (Node item in above.OptionalItems("voids"))
        {
            if (Void(item) is not { } hole)
            {
                continue;
            }

            voids.Add(hole);
            if (isOutlineKnown)
            {
                WarnOutside(hole, item.Mark, plan);
            }
        }

        return voids;
    }

    private WrittenJoists? Joists(MappingReader above)
    {
        if (above.OptionalGroup("joists", "'joists'", HouseKeys.Joists) is not { } joists)
        {
            return null;
        }

        Node? run = joists.Required("run");
        double? degrees = run is null ? null : Run(run);
        double? spacing = joists.OptionalLength("spacing", HouseLimits.JoistSpacing);
        double? first = joists.OptionalLength("first", HouseLimits.Coordinate);

        // For joists along y, left is towards smaller x, but the file gives x itself.
        return new(degrees, spacing, run is ScalarNode { Text: "y" } ? -first : first, joists.MarkOf("spacing"));
    }

    /// <summary>The joist layout of this build-up; null if it has no joists.</summary>
    private JoistLayout? Layout(FloorBuildUp buildUp, WrittenJoists? written, MappingReader above, PlanDraft plan)
    {
        Ribs? ribs = buildUp.Layers.Select(layer => layer.Joists).FirstOrDefault(found => found is not null);
        if (ribs is null)
        {
            if (written is not null)
            {
                source.Warning(above.MarkOf("joists"), $"build-up '{buildUp.Name}' has no joists; 'joists' is ignored");
            }

            return null;
        }

        if (written?.SpacingMetres is { } spacing && spacing <= ribs.WidthMetres)
        {
            source.Error(
                written.SpacingMark,
                $"spacing: {source.Lengths.Exact(spacing)} leaves no gap between joists {source.Lengths.Exact(ribs.WidthMetres)} wide; "
                    + "measure from centre to centre");
        }

        double? run = written?.RunDegrees;
        if (!above.Has("joists"))
        {
            run = ShorterWay(plan);
            string axis = run == 0 ? "x" : "y";
            source.Warning(above.Mark, $"no joist direction is given; along {axis}, the shorter span, is assumed; add 'joists: {{run: x}}' or 'joists: {{run: y}}'");
        }

        return new JoistLayout(run ?? 0, written?.SpacingMetres ?? ribs.SpacingMetres, written?.FirstMetres);
    }

    private double? Run(Node node)
    {
        switch (node)
        {
            case ScalarNode { Text: "x" }:
                return 0;
            case ScalarNode { Text: "y" }:
                return 90;
            case ScalarNode { IsNull: false } scalar when Quantity.Degrees.Parse(scalar.Text).Fault is null:
                return ValueReader.Number(source, node, "run", Quantity.Degrees, HouseLimits.Angle);
            default:
                source.Error(node.Mark,
                    $"run: {node.Kind} is not a joist direction; write x, y, or an angle in degrees anticlockwise from x");
                return null;
        }
    }

    private Polygon? Void(Node item)
    {
        IReadOnlyList<Point2>? corners = item is MappingNode
            ? PlaceReader.Rectangle(MappingReader.Open(source, item, "a void", HouseKeys.Void)!)
            : PlaceReader.Line(source, item, "voids", 3);
        return corners is null ? null : PolygonCheck.Check("this void", corners, item.Mark, new PlanProblems(source.File, source.Problems, source.Lengths));
    }

    private void WarnOutside(Polygon hole, Mark mark, PlanDraft plan)
    {
        Polygon[] rooms = [.. plan.Rooms.Where(room => room.Outline.Count > 2).Select(room => new Polygon([.. room.Outline]))];
        Point2 middle = 0.5 * (hole.Least + hole.Greatest);
        if (rooms.Length > 0
            && !hole.Corners.Append(middle).Any(at => rooms.Any(room => room.Contains(at)))
            && !rooms.Any(room => room.Corners.Any(hole.Contains)))
        {
            source.Warning(mark, $"this void is outside every room of {Quote.Of(plan.LevelName)}, so it connects nothing; check its corners");
        }
    }

    /// <summary>Joists span the shorter side of a plan: common practice, since a shorter joist is cheaper.</summary>
    private static double ShorterWay(PlanDraft plan)
    {
        Point2[] corners = [.. plan.Rooms.SelectMany(r => r.Outline), .. plan.Walls.SelectMany(w => w.Along)];
        return corners.Length == 0 || corners.Max(c => c.X) - corners.Min(c => c.X) <= corners.Max(c => c.Y) - corners.Min(c => c.Y)
            ? 0
            : 90;
    }

    /// <summary>The joists as written; null where a value is missing or wrong.</summary>
    private sealed record WrittenJoists(double? RunDegrees, double? SpacingMetres, double? FirstMetres, Mark SpacingMark);
}
