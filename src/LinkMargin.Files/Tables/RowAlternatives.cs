using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Tables;

/// <summary>
/// Other rows that could be true where a house file names one: what looks the same from outside. Constructions and panels of one
/// kind count if they are about as thick, since a doorway shows the thickness. Things that stand in rooms are easy to distinguish,
/// so only those whose names start alike count (a steel bath and an acrylic one).
/// </summary>
public static class RowAlternatives
{
    /// <summary>Greatest ratio of the thicknesses of two rows that look the same.</summary>
    public const double MostThicker = 1.4;

    // Rows of these kinds are different things, not variants of one thing.
    private static readonly string[] KindsOfThings = ["things", "substances", "joists", MaterialTables.OtherMaterials];

    /// <summary>Rows that could be true instead of a material, in table order, without the material itself.</summary>
    public static IReadOnlyList<Material> Of(MaterialTables tables, Material material)
    {
        ArgumentNullException.ThrowIfNull(tables);
        ArgumentNullException.ThrowIfNull(material);
        if (!tables.Materials.ContainsKey(material.Name))
        {
            return [];
        }

        string kind = tables.KindOf(material.Name);
        bool isThing = KindsOfThings.Contains(kind);
        return
        [
            .. tables.Materials.Values.Where(other => other.Name != material.Name
                && tables.KindOf(other.Name) == kind
                && other.Form == material.Form
                && (isThing ? FirstWord(other.Name) == FirstWord(material.Name) : AreAlike(other.ThicknessMetres, material.ThicknessMetres))),
        ];
    }

    /// <summary>Build-ups that could be true instead of one, in table order, without that one itself.</summary>
    public static IReadOnlyList<FloorBuildUp> Of(MaterialTables tables, FloorBuildUp buildUp)
    {
        ArgumentNullException.ThrowIfNull(tables);
        ArgumentNullException.ThrowIfNull(buildUp);
        return
        [
            .. tables.BuildUps.Values.Where(other => other.Name != buildUp.Name
                && HasJoists(other) == HasJoists(buildUp)
                && AreAlike(other.ThicknessMetres, buildUp.ThicknessMetres)),
        ];
    }

    private static bool HasJoists(FloorBuildUp buildUp) => buildUp.Layers.Any(layer => layer.Joists is not null);

    private static bool AreAlike(double? one, double? other) =>
        one is { } a && other is { } b && Math.Max(a, b) <= MostThicker * Math.Min(a, b);

    private static string FirstWord(string name) => name.Split('-')[0];
}
