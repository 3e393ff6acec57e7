using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Tables;

/// <summary>
/// Which rows could be meant where a house file names one: what looks alike from outside. Constructions and panels of one kind
/// count if they are about as thick, since a thickness is seen in a doorway; of things that stand in rooms, which anybody can
/// tell apart, only those whose names begin alike (a steel bath and an acrylic one).
/// </summary>
public static class RowAlternatives
{
    /// <summary>The thicker of two that could be taken for one another is at most so many times as thick.</summary>
    public const double MostThicker = 1.4;

    // Rows of these kinds stand for different things, not for one thing built differently.
    private static readonly string[] KindsOfThings = ["things", "substances", "joists", MaterialTables.OtherMaterials];

    /// <summary>Rows that could stand for a material, in the order of the table; without itself.</summary>
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

    /// <summary>Build-ups that could stand for one, in the order of the table; without itself.</summary>
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
