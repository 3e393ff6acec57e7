using LinkMargin.Engine.Houses;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Houses;

/// <summary>What looks odd about a wall or an opening of a material.</summary>
internal static class PanelAdvice
{
    /// <summary>
    /// A sentence, or null where nothing is odd. A wall has no thickness of its own: a row whose loss belongs to a length
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
