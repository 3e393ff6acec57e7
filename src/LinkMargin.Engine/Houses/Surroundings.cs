namespace LinkMargin.Engine.Houses;

/// <summary>
/// What lies below the lowest level and above the highest, where a house file says nothing: it matters only for what is
/// thrown back into the rooms.
/// </summary>
public static class Surroundings
{
    /// <summary>A concrete ground slab. Properties: Recommendation ITU-R P.2040-3 (08/2023), Table 3, concrete.</summary>
    public static Material Ground { get; } = Of("ground slab", 40, new Dielectric(5.24, 0, 0.0462, 0.7822), 0.15);

    /// <summary>A plasterboard ceiling under the roof. Properties: the same table, plasterboard.</summary>
    public static Material TopCeiling { get; } = Of("top ceiling", 0.8, new Dielectric(2.73, 0, 0.0085, 0.9395), 0.0125);

    private static Material Of(string name, double lossDb, Dielectric dielectric, double thicknessMetres) =>
        new(name, lossDb, 0, "ITU-R P.2040-3 (08/2023), Table 3; the construction is common practice")
        {
            ThicknessMetres = thicknessMetres,
            Layers = [new Layer(dielectric, name, thicknessMetres, 0)],
        };
}
