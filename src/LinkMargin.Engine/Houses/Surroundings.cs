namespace LinkMargin.Engine.Houses;

/// <summary>
/// What is assumed below the lowest level and above the highest; a house file does not describe it. It matters only for what
/// is reflected into the rooms.
/// </summary>
/// <param name="Ground">The slab on the ground.</param>
/// <param name="TopCeiling">The ceiling under the roof.</param>
public sealed record Surroundings(Material Ground, Material TopCeiling)
{
    /// <summary>The row of the material table with the slab's substance.</summary>
    public const string GroundRow = "concrete";

    /// <summary>The row of the material table with the ceiling's substance.</summary>
    public const string TopCeilingRow = "plasterboard";

    /// <summary>Both without layers: one loss at all angles.</summary>
    public static Surroundings Plain { get; } = Of(null, null);

    /// <summary>A slab of 150 mm and a ceiling of 12.5 mm: common practice.</summary>
    /// <param name="ground">Substance of the slab; null where it is not known.</param>
    /// <param name="topCeiling">Substance of the ceiling; null where it is not known.</param>
    public static Surroundings Of(Dielectric? ground, Dielectric? topCeiling) =>
        new(Of("ground slab", 40, ground, 0.15), Of("top ceiling", 0.8, topCeiling, 0.0125));

    private static Material Of(string name, double lossDb, Dielectric? substance, double thicknessMetres) =>
        new(name, lossDb, 0, "substance from the material table; the construction is common practice")
        {
            ThicknessMetres = thicknessMetres,
            Layers = substance is null ? [] : [new Layer(substance, name, thicknessMetres, 0)],
        };
}
