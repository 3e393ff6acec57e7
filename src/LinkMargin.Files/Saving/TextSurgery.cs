namespace LinkMargin.Files.Saving;

/// <summary>Changes single places of a YAML text and leaves everything else as it is. After each change the text is parsed again.</summary>
/// <param name="text">The text, without a byte order mark.</param>
internal sealed class TextSurgery(string text)
{
    private string text = text;
    private TextGroup? root;

    /// <summary>The current text.</summary>
    public string Text => text;

    /// <summary>Its parsed tree.</summary>
    public TextGroup Root => root ??= TextTree.Parse(text);

    private string LineEnd => text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";

    /// <summary>Replaces a value.</summary>
    public void Replace(TextNode node, string value)
    {
        // If the value is empty, the new one follows the colon directly and needs a space.
        string blank = node.Start == node.End && node.Start > 0 && text[node.Start - 1] == ':' ? " " : "";
        Splice(node.Start, node.End, blank + value);
    }

    /// <summary>Sets the value of a key in a group: in its place, or after the other keys.</summary>
    public void Set(TextGroup group, string key, string value)
    {
        if (group.Of(key) is { } entry)
        {
            Replace(entry.Value, value);
        }
        else if (group.IsInBraces)
        {
            int at = group.Entries.Count > 0 ? group.Entries[^1].Value.End : group.Start + 1;
            Splice(at, at, $"{(group.Entries.Count > 0 ? ", " : "")}{key}: {value}");
        }
        else
        {
            int at = EndOfLine(group.Entries[^1].Value.End);
            Splice(at, at, $"{LineEnd}{new string(' ', ColumnOf(group.Entries[0].Key.Start))}{key}: {value}");
        }
    }

    /// <summary>Removes a key and its value from a group.</summary>
    public void Remove(TextGroup group, string key)
    {
        int i = group.Entries.ToList().FindIndex(entry => entry.Key.Value == key);
        if (i < 0)
        {
            return;
        }

        TextEntry entry = group.Entries[i];
        if (!group.IsInBraces && i > 0)
        {
            RemoveLines(entry.Key.Start, entry.Value.End);
        }
        else if (i > 0)
        {
            Splice(group.Entries[i - 1].Value.End, entry.Value.End, "");
        }
        else
        {
            Splice(entry.Key.Start, group.Entries.Count > 1 ? group.Entries[1].Key.Start : entry.Value.End, "");
        }
    }

    /// <summary>Removes an item from the list of a key; the whole list if it was the only item.</summary>
    public void Remove(TextGroup owner, string key, TextNode item)
    {
        var list = (TextList)owner.Of(key)!.Value;
        int i = list.Items.ToList().IndexOf(item);
        if (list.Items.Count == 1)
        {
            Remove(owner, key);
        }
        else if (!list.IsInBrackets)
        {
            RemoveLines(text.LastIndexOf('-', item.Start - 1), item.End);
        }
        else if (i > 0)
        {
            Splice(list.Items[i - 1].End, item.End, "");
        }
        else
        {
            Splice(item.Start, list.Items[1].Start, "");
        }
    }

    /// <summary>Adds an item to the list of a key; adds the list if there is none.</summary>
    public void Add(TextGroup owner, string key, string item)
    {
        if (owner.Of(key)?.Value is not TextList { Items.Count: > 0 } list)
        {
            if (owner.IsInBraces || owner.Of(key) is not null)
            {
                Set(owner, key, $"[{item}]");
                return;
            }

            int column = ColumnOf(owner.Entries[0].Key.Start), behind = EndOfLine(owner.Entries[^1].Value.End);
            string indent = new(' ', column);
            Splice(behind, behind, $"{LineEnd}{indent}{key}:{LineEnd}{indent}  - {item}");
        }
        else if (list.IsInBrackets)
        {
            Splice(list.Items[^1].End, list.Items[^1].End, $", {item}");
        }
        else
        {
            int dash = text.LastIndexOf('-', list.Items[0].Start - 1), at = EndOfLine(list.Items[^1].End);
            Splice(at, at, $"{LineEnd}{new string(' ', ColumnOf(dash))}- {item}");
        }
    }

    /// <summary>The text of a node.</summary>
    public string At(TextNode node) => text[node.Start..node.End];

    private void RemoveLines(int from, int to)
    {
        int start = StartOfLine(from), end = EndOfLine(to);
        bool isLast = end >= text.Length;
        end = isLast ? text.Length : text.IndexOf('\n', end) + 1;

        // A text without a line end after its last line stays that way.
        start = isLast && start > 0 ? start - LineEnd.Length : start;
        Splice(start, end, "");
    }

    private int StartOfLine(int at) => at == 0 ? 0 : text.LastIndexOf('\n', at - 1) + 1;

    // Before the line end, but after any comment on the line.
    private int EndOfLine(int at)
    {
        int end = text.IndexOf('\n', at);
        return end < 0 ? text.Length : end > 0 && text[end - 1] == '\r' ? end - 1 : end;
    }

    private int ColumnOf(int at) => at - StartOfLine(at);

    private void Splice(int start, int end, string value)
    {
        text = string.Concat(text.AsSpan(0, start), value, text.AsSpan(end));
        root = null;
    }
}
