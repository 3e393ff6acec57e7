using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>What a table says of its rows for finding them: the kind of each and other words for it.</summary>
internal sealed class SearchWords
{
    /// <summary>The key of other words.</summary>
    public const string AlsoKey = "also";

    /// <summary>The key of a kind.</summary>
    public const string KindKey = "kind";

    private readonly Dictionary<string, IReadOnlyList<string>> also = [];
    private readonly Dictionary<string, string> kinds = [];

    /// <summary>Other words for a row, by its name; rows without any are left out.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<string>> Also => also;

    /// <summary>The kind of a row, by its name; rows without one are left out.</summary>
    public IReadOnlyDictionary<string, string> Kinds => kinds;

    /// <summary>Reads the words of a row; a mistake in them is recorded with the row's others.</summary>
    public void Read(MappingReader row, string? name, bool hasKind = false)
    {
        IReadOnlyList<Node> items = row.OptionalItems(AlsoKey);
        if (items.Count > TableLimits.MostAlso)
        {
            row.Source.Error(row.MarkOf(AlsoKey), FormattableString.Invariant(
                $"also: {items.Count} other words for a row are more than the {TableLimits.MostAlso} that are read; leave some out"));
            return;
        }

        string[] words = [.. items.Select(item => ValueReader.Name(row.Source, item, AlsoKey)).OfType<string>()];
        string? kind = hasKind ? RowNames.ReadKind(row, KindKey) : null;
        if (name is null)
        {
            return;
        }

        if (words.Length > 0)
        {
            also[name] = words;
        }

        if (kind is not null)
        {
            kinds[name] = kind;
        }
    }
}
