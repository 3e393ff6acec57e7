namespace LinkMargin.Engine.Houses;

/// <summary>Every material in a house: of walls, doors and windows, floors, fixtures, and the ribs in them.</summary>
public static class HouseFabric
{
    /// <summary>Each material once, in the order of first use.</summary>
    public static IReadOnlyList<Material> Of(House house)
    {
        List<Material> all = [];
        HashSet<Material> seen = [];
        Replace(house, material =>
        {
            if (seen.Add(material))
            {
                all.Add(material);
            }

            return material;
        });
        return all;
    }

    /// <summary>The same house with other materials. What was one material stays one.</summary>
    /// <param name="house">The house.</param>
    /// <param name="change">Gives the new material for one whose ribs are changed already.</param>
    public static House Replace(House house, Func<Material, Material> change)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(change);
        Dictionary<Material, Material> changed = [];

        Material Changed(Material material)
        {
            if (!changed.TryGetValue(material, out Material? other))
            {
                Material within = material.Ribs is { } ribs ? material with { Ribs = ribs with { Material = Changed(ribs.Material) } } : material;
                other = change(within);
                changed.Add(material, other);
            }

            return other;
        }

        FloorLayer ChangedLayer(FloorLayer layer) => layer with
        {
            Material = layer.Material is { } material ? Changed(material) : null,
            Joists = layer.Joists is { } joists ? joists with { Material = Changed(joists.Material) } : null,
        };

        return house with
        {
            Levels =
            [
                .. house.Levels.Select(level => level with
                {
                    Walls =
                    [
                        .. level.Walls.Select(wall => wall with
                        {
                            Material = Changed(wall.Material),
                            Openings = [.. wall.Openings.Select(o => o.Leaf is { } leaf ? o with { Leaf = Changed(leaf) } : o)],
                        }),
                    ],
                    Above = level.Above is { } above
                        ? above with { BuildUp = above.BuildUp with { Layers = [.. above.BuildUp.Layers.Select(ChangedLayer)] } }
                        : null,
                }),
            ],
            Fixtures =
            [
                .. house.Fixtures.Select(fixture => fixture with
                {
                    Material = Changed(fixture.Material),
                    SideMaterials = fixture.SideMaterials.ToDictionary(side => side.Key, side => Changed(side.Value)),
                }),
            ],
        };
    }
}
