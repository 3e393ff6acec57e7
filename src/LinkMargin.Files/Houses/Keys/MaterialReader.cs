using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Tables;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Keys;

/// <summary>Looks up names of a file in the tables.</summary>
internal sealed class MaterialReader(MaterialTables tables)
{
    /// <summary>
    /// Stands in for a material with a wrong name. An error is already recorded, so it never gets into a house, but the things made
    /// of it can still be checked.
    /// </summary>
    private static readonly Material Unknown = new("unknown", 0, 0, "");

    /// <summary>The material that a key names; null if the key is absent.</summary>
    public Material? Optional(MappingReader group, string key) =>
        group.Has(key) ? group.OptionalChoice(key, tables.Materials, "in the material table", Listed, Materials) ?? Unknown : null;

    /// <summary>The material that a key names.</summary>
    public Material Required(MappingReader group, string key) =>
        group.RequiredChoice(key, tables.Materials, "in the material table", Listed, Materials) ?? Unknown;

    /// <summary>The material of a wall or an opening; null if the key is absent.</summary>
    public Material? OptionalPanel(MappingReader group, string key) => AsPanel(group, key, Optional(group, key));

    /// <summary>The material of a wall or an opening.</summary>
    public Material RequiredPanel(MappingReader group, string key) => AsPanel(group, key, Required(group, key))!;

    private Material? AsPanel(MappingReader group, string key, Material? material)
    {
        if (material is not null && PanelAdvice.Of(material, tables, group.Source.Lengths) is { } advice)
        {
            group.Source.Warning(group.MarkOf(key), $"{key}: {advice}");
        }

        return material;
    }

    /// <summary>The build-up that a key names; null if it is absent or wrong.</summary>
    public FloorBuildUp? RequiredBuildUp(MappingReader group, string key) =>
        group.RequiredChoice(key, tables.BuildUps, "a floor build-up", Listed, Floors);

    /// <summary>Some names of build-ups, for a message.</summary>
    public string BuildUpExamples =>
        tables.BuildUps.Count == 0 ? "the tables hold none" : $"such as {string.Join(" or ", tables.BuildUps.Keys.Take(3))}; {Listed} lists all";

    private const string Listed = "'linkmargin materials'";

    // More rows than this are not a useful suggestion.
    private const int MostMeant = 3;

    private readonly Lazy<RowSearch> search = new(() => new RowSearch(tables));

    private string? Materials(string word) => Meant(word, tables.Materials.ContainsKey);

    private string? Floors(string word) => Meant(word, tables.BuildUps.ContainsKey);

    // Finds rows by a trade term, such as siding or tub.
    private string? Meant(string word, Func<string, bool> isOne)
    {
        string[] found = [.. search.Value.Find(word).Where(row => isOne(row.Name)).Select(row => $"'{row.Name}'")];
        return found.Length == 0
            ? null
            : $"did you mean {string.Join(" or ", found.Take(MostMeant))}?{(found.Length > MostMeant ? $" ({Listed[..^1]} {Quote.Of(word)[1..^1]}' lists more)" : "")}";
    }
}

/// <summary>Warns about a wall or an opening of an unsuitable material.</summary>
internal static class PanelAdvice
{
    /// <summary>
    /// A sentence, or null if there is nothing to warn about. A wall has no thickness of its own, so a material whose loss belongs
    /// to a length would count that whole length.
    /// </summary>
    public static string? Of(Material material, MaterialTables tables, LengthFormat lengths)
    {
        if (material is not { Form: LossForm.Bulk, ThicknessMetres: { } thickness })
        {
            return null;
        }

        string[] panels = [.. tables.Materials.Values
            .Where(row => row.Form == LossForm.Sheet && row.Name.StartsWith(material.Name, StringComparison.Ordinal))
            .Select(row => $"'{row.Name}'").Take(3)];
        string advice = panels.Length == 0 ? "choose a row for walls" : $"choose a row for walls, such as {string.Join(" or ", panels)}";
        return FormattableString.Invariant(
            $"'{material.Name}' is a substance: its {material.LossDb} dB are stated for {lengths.Fine(thickness)} and count here whatever the wall's thickness; {advice}");
    }
}
