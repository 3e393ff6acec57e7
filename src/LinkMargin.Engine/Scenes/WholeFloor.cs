using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Scenes;

/// <summary>A floor build-up, its joists aside, as one material: what it takes head on is the sum of its layers' losses.</summary>
internal static class WholeFloor
{
    internal static Material Of(FloorBuildUp buildUp)
    {
        Material[] materials = [.. buildUp.Layers.Select(layer => layer.Material).OfType<Material>()];
        bool isKnown = materials.All(material => material.Layers.Count > 0 || material.Dielectric is not null);
        return new Material(
            buildUp.Name,
            materials.Sum(material => material.LossDb),
            Math.Sqrt(materials.Sum(material => material.SpreadDb * material.SpreadDb)),
            buildUp.Source)
        {
            Description = buildUp.Description,
            ThicknessMetres = buildUp.ThicknessMetres,
            Layers = isKnown ? [.. buildUp.Layers.SelectMany(LayersOf)] : [],
        };
    }

    private static IEnumerable<Layer> LayersOf(FloorLayer layer) => layer.Material switch
    {
        null => [new Layer(null, "air", layer.ThicknessMetres, layer.ToleranceMetres)],
        { Layers.Count: > 0 } composite => composite.Layers,
        { } substance => [new Layer(substance.Dielectric, substance.Name, layer.ThicknessMetres, layer.ToleranceMetres)],
    };
}
