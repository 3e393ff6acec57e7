using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Yaml;

/// <summary>
/// Reads one group of keys. Every error is recorded in the source and reading continues: a method returns null both for an
/// absent key and for a wrong value, but only a wrong value or an absent required key is an error.
/// </summary>
internal sealed class MappingReader
{
    private readonly Dictionary<string, MappingEntry> entries;
    private readonly IReadOnlyCollection<string> keys;

    /// <summary>Starts reading, and records an error for each key that is not allowed.</summary>
    /// <param name="source">The file.</param>
    /// <param name="node">The group.</param>
    /// <param name="what">What the group describes, such as <c>a door</c>.</param>
    /// <param name="keys">Every allowed key.</param>
    public MappingReader(Source source, MappingNode node, string what, IReadOnlyCollection<string> keys)
    {
        (Source, Mark, What, this.keys) = (source, node.Mark, what, keys);
        entries = node.Entries.ToDictionary(entry => entry.Key);
        foreach (MappingEntry entry in node.Entries.Where(entry => !keys.Contains(entry.Key)))
        {
            source.Error(entry.KeyMark, $"{Quote.Of(entry.Key)} is not a key of {what}; {source.Advice(entry.Key, keys)}");
        }
    }

    /// <summary>The file.</summary>
    public Source Source { get; }

    /// <summary>Where the group starts.</summary>
    public Mark Mark { get; }

    /// <summary>What the group describes.</summary>
    public string What { get; }

    /// <summary>Reads a node as a group of keys; null, with an error recorded, if it is not one.</summary>
    public static MappingReader? Open(Source source, Node node, string what, IReadOnlyCollection<string> keys)
    {
        if (node is MappingNode mapping)
        {
            return new MappingReader(source, mapping, what, keys);
        }

        source.Error(node.Mark,
            $"{what} is written with keys ({string.Join(", ", keys.Take(4))}{(keys.Count > 4 ? ", …" : "")}), "
                + $"not as {node.Kind}");
        return null;
    }

    /// <summary>Whether a key is written, with a valid value or not.</summary>
    public bool Has(string key) => entries.ContainsKey(Known(key));

    /// <summary>The position of a key's value, or the start of the group if the key is absent.</summary>
    public Mark MarkOf(string key) => entries.TryGetValue(Known(key), out MappingEntry? entry) ? entry.Value.Mark : Mark;

    /// <summary>Refuses a file with another format in its 'form' key; the key may be absent.</summary>
    /// <param name="form">The format that this program reads, such as <c>linkmargin/house/1</c>.</param>
    public void CheckForm(string form)
    {
        if (OptionalText("form") is { } written && written != form)
        {
            Source.Error(MarkOf("form"), $"form: {Quote.Of(written)} is not a form that this version reads here; it reads '{form}'");
        }
    }

    /// <summary>A key's value; null if absent or, with an error recorded, if nothing follows the key.</summary>
    public Node? Optional(string key)
    {
        if (!entries.TryGetValue(Known(key), out MappingEntry? entry))
        {
            return null;
        }

        if (entry.Value is ScalarNode { IsNull: true })
        {
            Source.Error(entry.KeyMark, $"'{key}' of {What} has no value; write one or remove the key");
            return null;
        }

        return entry.Value;
    }

    /// <summary>A key's value; null, with an error recorded, if absent.</summary>
    public Node? Required(string key)
    {
        if (!Has(key))
        {
            Source.Error(Mark, $"{What} needs the key '{key}'");
            return null;
        }

        return Optional(key);
    }

    /// <summary>A name, if written.</summary>
    public string? OptionalName(string key) => Optional(key) is { } node ? ValueReader.Name(Source, node, key) : null;

    /// <summary>A name.</summary>
    public string? RequiredName(string key, int longest = ValueReader.LongestName) =>
        Required(key) is { } node ? ValueReader.Name(Source, node, key, longest) : null;

    /// <summary>A text, if written.</summary>
    public string? OptionalText(string key) => Optional(key) is { } node ? ValueReader.Text(Source, node, key) : null;

    /// <summary>A text.</summary>
    public string? RequiredText(string key) => Required(key) is { } node ? ValueReader.Text(Source, node, key) : null;

    /// <summary>A length in metres, if written.</summary>
    public double? OptionalLength(string key, QuantityRange range) =>
        Optional(key) is { } node ? ValueReader.Length(Source, node, key, range) : null;

    /// <summary>A length in metres.</summary>
    public double? RequiredLength(string key, QuantityRange range) =>
        Required(key) is { } node ? ValueReader.Length(Source, node, key, range) : null;

    /// <summary>A number of some kind, if written.</summary>
    public double? OptionalNumber(string key, Quantity quantity, QuantityRange range) =>
        Optional(key) is { } node ? ValueReader.Number(Source, node, key, quantity, range) : null;

    /// <summary>A number of some kind.</summary>
    public double? RequiredNumber(string key, Quantity quantity, QuantityRange range) =>
        Required(key) is { } node ? ValueReader.Number(Source, node, key, quantity, range) : null;

    /// <summary>True or false, if written.</summary>
    public bool? OptionalFlag(string key) => Optional(key) is { } node ? ValueReader.Flag(Source, node, key) : null;

    /// <summary>The value that a word stands for, if written; see <see cref="ValueReader.TryChoose"/>.</summary>
    public T? OptionalChoice<T>(string key, IReadOnlyDictionary<string, T> words, string what, string? whereListed = null, Func<string, string?>? otherwise = null)
        where T : class =>
        Optional(key) is { } node && ValueReader.TryChoose(Source, node, key, words, what, whereListed, out T? chosen, otherwise) ? chosen : null;

    /// <summary>The value that a word stands for; see <see cref="ValueReader.TryChoose"/>.</summary>
    public T? RequiredChoice<T>(string key, IReadOnlyDictionary<string, T> words, string what, string? whereListed = null, Func<string, string?>? otherwise = null)
        where T : class =>
        Required(key) is { } node && ValueReader.TryChoose(Source, node, key, words, what, whereListed, out T? chosen, otherwise) ? chosen : null;

    /// <summary>The enum value that a word stands for, if written.</summary>
    public T? OptionalWord<T>(string key, IReadOnlyDictionary<string, T> words, string what)
        where T : struct, Enum =>
        Optional(key) is { } node && ValueReader.TryChoose(Source, node, key, words, what, null, out T chosen) ? chosen : null;

    /// <summary>The enum value that a word stands for.</summary>
    public T? RequiredWord<T>(string key, IReadOnlyDictionary<string, T> words, string what)
        where T : struct, Enum =>
        Required(key) is { } node && ValueReader.TryChoose(Source, node, key, words, what, null, out T chosen) ? chosen : null;

    /// <summary>The items of a list; empty if the key is absent.</summary>
    public IReadOnlyList<Node> OptionalItems(string key) => Optional(key) is { } node ? ItemsOf(key, node) : [];

    /// <summary>The items of a list that is required and not empty.</summary>
    public IReadOnlyList<Node> RequiredItems(string key)
    {
        if (Required(key) is not { } node)
        {
            return [];
        }

        if (node is SequenceNode { Items.Count: 0 })
        {
            Source.Error(node.Mark, $"{key}: the list is empty; {What} needs at least one");
        }

        return ItemsOf(key, node);
    }

    /// <summary>The groups of keys in a list; items that are not groups are reported and omitted.</summary>
    public IEnumerable<MappingReader> OptionalGroups(string key, string what, IReadOnlyCollection<string> itemKeys) =>
        Groups(OptionalItems(key), what, itemKeys);

    /// <summary>The groups of keys in a list that is required and not empty.</summary>
    public IEnumerable<MappingReader> RequiredGroups(string key, string what, IReadOnlyCollection<string> itemKeys) =>
        Groups(RequiredItems(key), what, itemKeys);

    /// <summary>A group of keys inside this one, if written.</summary>
    public MappingReader? OptionalGroup(string key, string what, IReadOnlyCollection<string> itemKeys) =>
        Optional(key) is { } node ? Open(Source, node, what, itemKeys) : null;

    private IReadOnlyList<Node> ItemsOf(string key, Node node)
    {
        if (node is SequenceNode list)
        {
            return list.Items;
        }

        Source.Error(node.Mark, $"{key}: a list is needed (items that begin with '- ', or [ ... ]), not {node.Kind}");
        return [];
    }

    private List<MappingReader> Groups(IReadOnlyList<Node> items, string what, IReadOnlyCollection<string> itemKeys)
    {
        List<MappingReader> groups = [];
        foreach (Node item in items)
        {
            if (Open(Source, item, what, itemKeys) is { } group)
            {
                groups.Add(group);
            }
        }

        return groups;
    }

    /// <summary>Asking for a key that is not allowed is a bug of ours: no file could ever contain it.</summary>
    private string Known(string key) =>
        keys.Contains(key) ? key : throw new ArgumentException($"'{key}' is not among the keys of {What}.", nameof(key));
}
