using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>Reads studs or joists: what they are of, how wide, how deep, how far apart.</summary>
internal static class RibsReader
{
    private static readonly string[] Keys = ["of", "width", "depth", "spacing"];

    /// <summary>Reads them, if written; null where they are not, or with mistakes recorded.</summary>
    /// <param name="row">What they are inside.</param>
    /// <param name="key">The key they stand under.</param>
    public static RibsDraft? Read(MappingReader row, string key)
    {
        if (row.OptionalGroup(key, $"a group of {key}", Keys) is not { } ribs)
        {
            return null;
        }

        string? of = ribs.RequiredName("of");
        double? width = ribs.RequiredLength("width", TableLimits.Thickness);
        double? depth = ribs.RequiredLength("depth", TableLimits.Thickness);
        double? spacing = ribs.RequiredLength("spacing", TableLimits.Spacing);
        if (width >= spacing)
        {
            ribs.Source.Error(
                ribs.MarkOf("spacing"),
                $"spacing: {key} {TableLimits.Spacing.Show(width.Value)} wide cannot stand {TableLimits.Spacing.Show(spacing.Value)} apart between centres; give the distance from centre to centre");
            return null;
        }

        return of is not null && width is not null && depth is not null && spacing is not null
            ? new RibsDraft(of, ribs.MarkOf("of"), width.Value, depth.Value, spacing.Value)
            : null;
    }
}
