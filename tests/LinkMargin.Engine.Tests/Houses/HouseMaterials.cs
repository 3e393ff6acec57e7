using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>A house with every material replaced.</summary>
internal static class HouseMaterials
{
    internal static House Replace(House house, Func<Material, Material> by) => house with
    {
        Levels = [.. house.Levels.Select(level => level with
        {
            Walls = [.. level.Walls.Select(wall => wall with
            {
                Material = by(wall.Material),
                Openings = [.. wall.Openings.Select(o => o with { Leaf = o.Leaf is Material leaf ? by(leaf) : null })],
            })],
            Above = level.Above is FloorAbove above ? above with { BuildUp = Replace(above.BuildUp, by) } : null,
        })],
        Fixtures = [.. house.Fixtures.Select(f => f with { Material = by(f.Material) })],
    };

    private static FloorBuildUp Replace(FloorBuildUp buildUp, Func<Material, Material> by) => buildUp with
    {
        Layers = [.. buildUp.Layers.Select(layer => layer with
        {
            Material = layer.Material is Material material ? by(material) : null,
            Joists = layer.Joists is Ribs ribs ? ribs with { Material = by(ribs.Material) } : null,
        })],
    };
}
