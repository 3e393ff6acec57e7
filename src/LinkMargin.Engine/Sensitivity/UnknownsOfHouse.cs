using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Sensitivity;

/// <summary>
/// The assumptions a house file makes: each wall, opening and fixture by itself, all of one table row together, each floor, and
/// each door that stands open.
/// </summary>
internal sealed class UnknownsOfHouse
{
    /// <summary>Losses closer than this count as equal, dB.</summary>
    private const double LeastApartDb = 0.5;

    private readonly House house;
    private readonly PlausibleRows rows;
    private readonly Dictionary<string, Material> inUse;

    internal UnknownsOfHouse(House house, PlausibleRows rows)
    {
        (this.house, this.rows) = (house, rows);

        // A row that the house uses already is taken as it is there, as fitted to measurements.
        inUse = HouseFabric.Of(house).DistinctBy(material => material.Name).ToDictionary(material => material.Name, StringComparer.Ordinal);
    }

    /// <summary>Assumptions about one material: for each row first everything made of it, then each item alone.</summary>
    internal IEnumerable<(Unknown All, IReadOnlyList<Unknown> Each)> OfMaterials()
    {
        foreach ((UnknownKind kind, Part[] parts) in new[] { (UnknownKind.Walls, Walls()), (UnknownKind.Openings, Openings()), (UnknownKind.Fixtures, Fixtures()) })
        {
            foreach (IGrouping<string, Part> alike in parts.GroupBy(part => part.Material.Name))
            {
                Material material = alike.First().Material;
                if (rows.MaterialsLike(material) is { Count: > 0 } others && Extremes(material, others) is { Length: > 0 } extremes)
                {
                    Unknown[] each = [.. alike.Select(part => (part.Name, part.LevelIndex)).Distinct().Select(part => Of(kind, part.Name, part.LevelIndex, material, extremes))];
                    yield return (each.Length == 1 ? each[0] : Of(kind, null, null, material, extremes), each);
                }
            }
        }
    }

    /// <summary>Assumptions about whole floors.</summary>
    internal IEnumerable<Unknown> OfFloors()
    {
        for (int i = 0; i + 1 < house.Levels.Count; i++)
        {
            if (house.Levels[i].Above is not { } above)
            {
                continue;
            }

            int level = i;
            Alternative[] alternatives =
            [
                .. Ends(rows.BuildUpsLike(above.BuildUp).Select(other => new Alternative(other.Name, LossOf(other) - LossOf(above.BuildUp), new SwapBuildUp(level, other)))),
            ];
            if (alternatives.Length > 0)
            {
                yield return new Unknown(UnknownKind.Floor, house.Levels[i].Name, i, above.BuildUp.Name, alternatives)
                {
                    Rows = [.. above.BuildUp.Layers.SelectMany(layer => new[] { layer.Material, layer.Joists?.Material }).OfType<Material>().Select(material => material.TableRow).Distinct()],
                };
            }
        }
    }

    /// <summary>Doors that the file leaves open.</summary>
    internal IEnumerable<Unknown> OfOpenDoors() =>
        from level in house.Levels.Select((level, index) => (level.Walls, Index: index))
        from wall in level.Walls
        from door in wall.Openings
        where door is { Kind: OpeningKind.Door, IsOpen: true, Leaf: not null }
        select new Unknown(
            UnknownKind.DoorState,
            door.Name,
            level.Index,
            Unknown.Open,
            [new Alternative(Unknown.Shut, door.Leaf!.LossDb, new SetOpening(door.Name, level.Index, IsOpen: false))]);

    private Part[] Walls() =>
        [.. house.Levels.SelectMany((level, i) => level.Walls.Select(wall => new Part(wall.Name, i, wall.Material)))];

    private Part[] Openings() =>
    [
        .. house.Levels.SelectMany((level, i) => level.Walls.SelectMany(wall => wall.Openings)
            .Where(opening => opening is { Leaf: not null, IsOpen: false })
            .Select(opening => new Part(opening.Name, i, opening.Leaf!))),
    ];

    private Part[] Fixtures() =>
    [
        .. house.Fixtures.Where(fixture => fixture.Seat is null).SelectMany(fixture =>
            fixture.SideMaterials.Values.Prepend(fixture.Material).Distinct().Select(material => new Part(fixture.Name, fixture.LevelIndex, material))),
    ];

    private static Unknown Of(UnknownKind kind, string? name, int? level, Material material, Material[] extremes) => new(
        kind,
        name,
        level,
        material.Name,
        [.. extremes.Select(other => new Alternative(other.Name, other.LossDb - material.LossDb, new SwapMaterial(PartOf(kind), name, level, material.Name, other)))])
    {
        Rows = [material.TableRow],
    };

    private static FabricPart PartOf(UnknownKind kind) => kind switch
    {
        UnknownKind.Walls => FabricPart.Walls,
        UnknownKind.Openings => FabricPart.Openings,
        _ => FabricPart.Fixtures,
    };

    private Material[] Extremes(Material material, IReadOnlyList<Material> others)
    {
        Material[] known = [.. others.Select(other => inUse.GetValueOrDefault(other.Name, other))];
        return [.. Ends(known.Select(other => (other.LossDb - material.LossDb, other))).Select(end => end.End)];
    }

    // The alternatives with the least and the most loss, if these are below and above what is assumed.
    private static IEnumerable<Alternative> Ends(IEnumerable<Alternative> all) =>
        Ends(all.Select(alternative => (alternative.LossDb, alternative))).Select(end => end.End);

    private static IEnumerable<(double LossDb, T End)> Ends<T>(IEnumerable<(double LossDb, T End)> all)
    {
        (double LossDb, T End)[] ordered = [.. all.OrderBy(one => one.LossDb)];
        if (ordered.Length > 0 && ordered[0].LossDb <= -LeastApartDb)
        {
            yield return ordered[0];
        }

        if (ordered.Length > 0 && ordered[^1].LossDb >= LeastApartDb)
        {
            yield return ordered[^1];
        }
    }

    private static double LossOf(FloorBuildUp buildUp) => buildUp.Layers.Sum(layer => layer.Material?.LossDb ?? 0);

    private sealed record Part(string Name, int LevelIndex, Material Material);
}
