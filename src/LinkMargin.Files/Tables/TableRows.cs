using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>The rows of a table.</summary>
internal static class TableRows
{
    /// <summary>The rows under a key; those beyond the limit are omitted, with an error recorded.</summary>
    public static IEnumerable<MappingReader> Of(
        MappingReader table, string key, string what, IReadOnlyCollection<string> rowKeys)
    {
        if (table.Has(key) && table.Optional(key) is SequenceNode { Items: { Count: > TableLimits.MostRows } items })
        {
            table.Source.Error(items[TableLimits.MostRows].Mark, FormattableString.Invariant(
                $"{key}: this table has {items.Count} rows, more than the allowed {TableLimits.MostRows}; remove what no house needs"));
            return items.Take(TableLimits.MostRows)
                .Select(item => MappingReader.Open(table.Source, item, what, rowKeys))
                .OfType<MappingReader>();
        }

        return table.RequiredGroups(key, what, rowKeys);
    }
}
