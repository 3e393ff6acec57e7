using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tables;

/// <summary>One row that a search found.</summary>
/// <param name="Name">The word a house file uses.</param>
/// <param name="Kind">The kind it stands with.</param>
/// <param name="What">What it is.</param>
public sealed record FoundRow(string Name, string Kind, string What);

/// <summary>
/// Finds rows by the words of the trade: in their names, in what their tables call them besides, and in what they are.
/// </summary>
public sealed class RowSearch
{
    // Shorter than this, a word's beginning says too little.
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

    /// <summary>The rows that answer to every word, best first; those equally good in the order of the tables.</summary>
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

    // The less the better: the row's very word, then a part of its name, of its other words, of what it is; then beginnings.
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

    // Plural and case are not what makes a word a different one.
    private static string[] Split(string text) =>
        [.. text.ToLowerInvariant().Split(Between, StringSplitOptions.RemoveEmptyEntries).Select(Singular)];

    private static string Singular(string word) =>
        word.Length > LeastBeginning && word[^1] == 's' && word[^2] != 's' ? word[..^1] : word;

    private sealed record Entry(FoundRow Row, string[] Phrases, string[] Name, string[] Also, string[] What)
    {
        public IEnumerable<string> All => Name.Concat(Also).Concat(What);
    }
}
