using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Tables;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Keys;

/// <summary>Looks up what a file calls by name in the tables.</summary>
internal sealed class MaterialReader(MaterialTables tables)
{
    /// <summary>
    /// Stands in for a material whose name is wrong. An error is recorded by then, so it never reaches a house, but what
    /// is made of it can still be checked.
    /// </summary>
    private static readonly Material Unknown = new("unknown", 0, 0, "");

    /// <summary>The material a key names; null where the key is absent.</summary>
    public Material? Optional(MappingReader group, string key) =>
        group.Has(key) ? group.OptionalChoice(key, tables.Materials, "in the material table", Listed, Materials) ?? Unknown : null;

    /// <summary>The material a key names.</summary>
    public Material Required(MappingReader group, string key) =>
        group.RequiredChoice(key, tables.Materials, "in the material table", Listed, Materials) ?? Unknown;

    /// <summary>What a wall or an opening is of; null where the key is absent.</summary>
    public Material? OptionalPanel(MappingReader group, string key) => AsPanel(group, key, Optional(group, key));

    /// <summary>What a wall or an opening is of.</summary>
    public Material RequiredPanel(MappingReader group, string key) => AsPanel(group, key, Required(group, key))!;

    private Material? AsPanel(MappingReader group, string key, Material? material)
    {
        if (material is not null && PanelAdvice.Of(material, tables, group.Source.Lengths) is { } advice)
        {
            group.Source.Warning(group.MarkOf(key), $"{key}: {advice}");
        }

        return material;
    }

    /// <summary>The build-up a key names; null where it is absent or wrong.</summary>
    public FloorBuildUp? RequiredBuildUp(MappingReader group, string key) =>
        group.RequiredChoice(key, tables.BuildUps, "a floor build-up", Listed, Floors);

    /// <summary>Some build-ups, for a message.</summary>
    public string BuildUpExamples =>
        tables.BuildUps.Count == 0 ? "the tables hold none" : $"such as {string.Join(" or ", tables.BuildUps.Keys.Take(3))}; {Listed} lists all";

    private const string Listed = "'linkmargin materials'";

    // More rows than this are a list to look at, not an answer.
    private const int MostMeant = 3;

    private readonly Lazy<RowSearch> search = new(() => new RowSearch(tables));

    private string? Materials(string word) => Meant(word, tables.Materials.ContainsKey);

    private string? Floors(string word) => Meant(word, tables.BuildUps.ContainsKey);

    // A word of the trade, such as siding or tub.
    private string? Meant(string word, Func<string, bool> isOne)
    {
        string[] found = [.. search.Value.Find(word).Where(row => isOne(row.Name)).Select(row => $"'{row.Name}'")];
        return found.Length == 0
            ? null
            : $"did you mean {string.Join(" or ", found.Take(MostMeant))}?{(found.Length > MostMeant ? $" ({Listed[..^1]} {Quote.Of(word)[1..^1]}' lists more)" : "")}";
    }
}

/// <summary>What looks wrong about a wall or an opening of a material.</summary>
internal static class PanelAdvice
{
    /// <summary>
    /// A sentence, or null where nothing is a warning. A wall has no thickness of its own: a row whose loss belongs to a length
    /// travelled would count that length.
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
        string advice = panels.Length == 0 ? "choose the row of a wall" : $"choose the row of a wall, such as {string.Join(" or ", panels)}";
        return FormattableString.Invariant(
            $"'{material.Name}' is a substance, whose {material.LossDb} dB belong to {lengths.Fine(thickness)} of it and are counted here whatever the wall's thickness; {advice}");
    }
}
