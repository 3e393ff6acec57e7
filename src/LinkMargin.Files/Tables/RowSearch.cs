using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>One row that a search found.</summary>
/// <param name="Name">The name in house files.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="What">What it is.</param>
public sealed record FoundRow(string Name, string Kind, string What);

/// <summary>
/// Finds rows by trade terms: in their names, their synonyms and their descriptions.
/// </summary>
public sealed class RowSearch
{
    // A shorter prefix matches too much.
    private const int LeastBeginning = 3;

    private static readonly char[] Between = [' ', '-', ',', ';', ':', '(', ')', '/', '_'];

    private readonly Entry[] entries;

    /// <summary>Searches the materials, floor build-ups and radios of some tables.</summary>
    public RowSearch(MaterialTables tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        entries =
        [
            .. tables.Materials.Values.Select(row => Of(tables, row.Name, row.Description)),
            .. tables.BuildUps.Values.Select(row => Of(tables, row.Name, row.Description)),
            .. tables.Radios.Values.Select(row => Of(tables, row.Name, row.Description)),
        ];
    }

    /// <summary>The rows that match every word, best first; equally good ones in table order.</summary>
    /// <param name="words">One word or more, such as <c>lap siding</c>.</param>
    public IReadOnlyList<FoundRow> Find(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        string[] wanted = Split(words);
        if (wanted.Length == 0 || words.Length > NearestWord.LongestWord)
        {
            return [];
        }

        string phrase = string.Join(' ', wanted);
        return
        [
            .. entries.Select(entry => (entry.Row, Cost: CostOf(entry, phrase, wanted)))
                .Where(found => found.Cost is not null)
                .OrderBy(found => found.Cost)
                .Select(found => found.Row),
        ];
    }

    private static Entry Of(MaterialTables tables, string name, string what)
    {
        IReadOnlyList<string> also = tables.AlsoOf(name);
        return new Entry(
            new FoundRow(name, tables.KindOf(name), what),
            [.. also.Select(text => string.Join(' ', Split(text)))],
            Split(name),
            [.. also.SelectMany(Split)],
            Split(what));
    }

    // Lower is better: the exact name, then a word of the name, the synonyms or the description; then the start of any word. Null: no match.
    private static int? CostOf(Entry entry, string phrase, string[] wanted)
    {
        if (entry.Phrases.Contains(phrase) || string.Join(' ', entry.Name) == phrase)
        {
            return 0;
        }

        int total = 0;
        foreach (string word in wanted)
        {
            int cost = entry.Name.Contains(word) ? 1
                : entry.Also.Contains(word) ? 2
                : entry.What.Contains(word) ? 3
                : word.Length >= LeastBeginning && entry.All.Any(w => w.StartsWith(word, StringComparison.Ordinal)) ? 5
                : 0;
            if (cost == 0)
            {
                return null;
            }

            total += cost;
        }

        return total;
    }

    // Plural and case do not matter.
    private static string[] Split(string text) =>
        [.. text.ToLowerInvariant().Split(Between, StringSplitOptions.RemoveEmptyEntries).Select(Singular)];

    private static string Singular(string word) =>
        word.Length > LeastBeginning && word[^1] == 's' && word[^2] != 's' ? word[..^1] : word;

    private sealed record Entry(FoundRow Row, string[] Phrases, string[] Name, string[] Also, string[] What)
    {
        public IEnumerable<string> All => Name.Concat(Also).Concat(What);
    }
}

/// <summary>One kind of rows.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Names">The names of its rows; fewer than the rows if some have none.</param>
/// <param name="Count">How many rows there are.</param>
/// <param name="Rows">Tables with only its rows.</param>
public sealed record RowKind(string Name, IReadOnlyList<string> Names, int Count, MaterialTables Rows)
{
    private const string MarginKind = "margins", SpreadKind = "spreads";

    /// <summary>The kinds in some tables, in table order.</summary>
    public static IReadOnlyList<RowKind> Of(MaterialTables tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        string[] names = [.. tables.Materials.Keys, .. tables.BuildUps.Keys, .. tables.Radios.Keys];
        MaterialTables none = tables.Only([]);
        RowKind[] kinds =
        [
            .. names.Distinct().GroupBy(tables.KindOf).Select(kind => new RowKind(kind.Key, [.. kind], kind.Count(), tables.Only([.. kind]))),
            new(MarginKind, [], tables.Margins.Count, none with { Margins = tables.Margins, Bands = tables.Bands }),
            new(SpreadKind, [.. tables.SpreadRows.Select(row => row.Name)], tables.SpreadRows.Count, none with { SpreadRows = tables.SpreadRows }),
        ];
        return [.. kinds.Where(kind => kind.Count > 0)];
    }
}

/// <summary>What a table gives for finding its rows: the kind of each and its synonyms.</summary>
internal sealed class SearchWords
{
    /// <summary>The key of synonyms.</summary>
    public const string AlsoKey = "also";

    /// <summary>The key of a kind.</summary>
    public const string KindKey = "kind";

    private readonly Dictionary<string, IReadOnlyList<string>> also = [];
    private readonly Dictionary<string, string> kinds = [];

    /// <summary>Synonyms by row name; rows without any are omitted.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<string>> Also => also;

    /// <summary>Kinds by row name; rows without one are omitted.</summary>
    public IReadOnlyDictionary<string, string> Kinds => kinds;

    /// <summary>Reads the search words of a row; errors are recorded.</summary>
    public void Read(MappingReader row, string? name, bool hasKind = false)
    {
        IReadOnlyList<Node> items = row.OptionalItems(AlsoKey);
        if (items.Count > TableLimits.MostAlso)
        {
            row.Source.Error(row.MarkOf(AlsoKey), FormattableString.Invariant(
                $"also: this row has {items.Count} other words, more than the allowed {TableLimits.MostAlso}; remove some"));
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
