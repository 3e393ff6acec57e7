using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses;

/// <summary>Reads what lies between a level and the next.</summary>
internal sealed class FloorAboveReader(Source source, MaterialReader materials)
{
    /// <summary>Reads it; null where the build-up could not be read.</summary>
    /// <param name="level">The level.</param>
    /// <param name="plan">What was read of it.</param>
    /// <param name="isOutlineKnown">Whether that is all of it.</param>
    public FloorAbove? Read(MappingReader level, PlanDraft plan, bool isOutlineKnown)
    {
        if (level.OptionalGroup("above", "'above'", HouseKeys.Above) is not { } above)
        {
            return null;
        }

        FloorBuildUp? buildUp = materials.RequiredBuildUp(above, "build-up");
        List<Polygon> voids = [];
        foreach (Node item in above.OptionalItems("voids"))
        {
            if (Void(item) is { } hole)
            {
                voids.Add(hole);
                if (isOutlineKnown)
                {
                    WarnOutside(hole, item.Mark, plan);
                }
            }
        }

        MappingReader? joists = above.OptionalGroup("joists", "'joists'", HouseKeys.Joists);
        Node? run = joists?.Required("run");
        double? runDegrees = run is null ? null : Run(run);
        double? spacing = joists?.OptionalLength("spacing", HouseLimits.JoistSpacing);
        double? first = joists?.OptionalLength("first", HouseLimits.Coordinate);
        if (buildUp is null)
        {
            return null;
        }

        Ribs? ribs = buildUp.Layers.Select(layer => layer.Joists).FirstOrDefault(found => found is not null);
        if (ribs is null)
        {
            if (joists is not null)
            {
                source.Warning(above.MarkOf("joists"), $"the build-up '{buildUp.Name}' has no joists, so how they lie plays no part");
            }

            return new FloorAbove(buildUp, null, voids);
        }

        if (spacing <= ribs.WidthMetres)
        {
            source.Error(joists!.MarkOf("spacing"), 
                $"spacing: joists {source.Lengths.Exact(spacing.Value)} apart leave no gap, for each is {source.Lengths.Exact(ribs.WidthMetres)} wide; "
                    + "measure from centre to centre");
        }

        if (!above.Has("joists"))
        {
            runDegrees = ShorterWay(plan);
            source.Warning(above.Mark,
                $"how the joists run is not said and taken to be the shorter way, {(runDegrees == 0 ? "x" : "y")}; "
                    + $"add 'joists: {{run: x}}' or 'joists: {{run: y}}'");
        }

        // Along y, left is towards smaller x, but what a person measures is x.
        double? offset = run is ScalarNode { Text: "y" } ? -first : first;
        return new FloorAbove(buildUp, new JoistLayout(runDegrees ?? 0, spacing ?? ribs.SpacingMetres, offset), voids);
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
                    $"run: {node.Kind} is not a direction of joists; write x, y, or an angle in degrees anticlockwise from x");
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
            source.Warning(mark, $"this void lies beside every room of {Quote.Of(plan.LevelName)}, so it joins nothing; look at its corners");
        }
    }

    /// <summary>Joists span the shorter way of a plan: common practice, since a shorter joist is a cheaper one.</summary>
    private static double ShorterWay(PlanDraft plan)
    {
        Point2[] corners = [.. plan.Rooms.SelectMany(r => r.Outline), .. plan.Walls.SelectMany(w => w.Along)];
        return corners.Length == 0 || corners.Max(c => c.X) - corners.Min(c => c.X) <= corners.Max(c => c.Y) - corners.Min(c => c.Y)
            ? 0
            : 90;
    }
}
