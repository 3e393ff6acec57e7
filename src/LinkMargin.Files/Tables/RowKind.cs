namespace LinkMargin.Files.Tables;

/// <summary>One kind of rows.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Names">The names of its rows; fewer than there are where rows of the kind have none.</param>
/// <param name="Count">How many rows there are.</param>
/// <param name="Rows">Tables of its rows alone.</param>
public sealed record RowKind(string Name, IReadOnlyList<string> Names, int Count, MaterialTables Rows)
{
    private const string MarginKind = "margins", SpreadKind = "spreads";

    /// <summary>The kinds that some tables have, in the order of the tables.</summary>
    public static IReadOnlyList<RowKind> Of(MaterialTables tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        string[] names = [.. tables.Materials.Keys, .. tables.BuildUps.Keys, .. tables.Radios.Keys];
        MaterialTables none = tables.Only([]);
        RowKind[] kinds =
        [
            .. names.Distinct().GroupBy(tables.KindOf).Select(kind => new RowKind(kind.Key, [.. kind], kind.Count(), tables.Only([.. kind]))),
            new(MarginKind, [], tables.Margins.Count, none with { Margins = tables.Margins }),
            new(SpreadKind, [.. tables.SpreadRows.Select(row => row.Name)], tables.SpreadRows.Count, none with { SpreadRows = tables.SpreadRows }),
        ];
        return [.. kinds.Where(kind => kind.Count > 0)];
    }
}
