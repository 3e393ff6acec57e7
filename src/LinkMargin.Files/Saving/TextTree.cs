using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace LinkMargin.Files.Saving;

/// <summary>A value of a YAML text with its position, so that it alone can be changed.</summary>
/// <param name="Start">Position of its first character.</param>
/// <param name="End">Position after its last character.</param>
internal abstract record TextNode(int Start, int End);

/// <summary>A single value.</summary>
internal sealed record TextScalar(int Start, int End, string Value) : TextNode(Start, End);

/// <summary>A list, in brackets or with one item per line.</summary>
internal sealed record TextList(int Start, int End, bool IsInBrackets, IReadOnlyList<TextNode> Items) : TextNode(Start, End);

/// <summary>Keys with values, in braces or with one key per line.</summary>
internal sealed record TextGroup(int Start, int End, bool IsInBraces, IReadOnlyList<TextEntry> Entries) : TextNode(Start, End)
{
    /// <summary>The entry of a key; null if there is none.</summary>
    public TextEntry? Of(string key) => Entries.FirstOrDefault(entry => entry.Key.Value == key);

    /// <summary>The single value of a key; null if there is none.</summary>
    public string? ValueOf(string key) => (Of(key)?.Value as TextScalar)?.Value;

    /// <summary>The groups listed under a key.</summary>
    public IEnumerable<TextGroup> Listed(string key) => (Of(key)?.Value as TextList)?.Items.OfType<TextGroup>() ?? [];
}

/// <summary>A key and its value.</summary>
internal sealed record TextEntry(TextScalar Key, TextNode Value);

/// <summary>Parses a text that was already read as a house, so its syntax is known to be correct.</summary>
internal static class TextTree
{
    /// <summary>Parses the text.</summary>
    /// <param name="text">The text, without a byte order mark.</param>
    public static TextGroup Parse(string text)
    {
        var parser = new Parser(new Scanner(new StringReader(text), skipComments: true));
        parser.Consume<StreamStart>();
        parser.Consume<DocumentStart>();
        return (TextGroup)Read(parser, text);
    }

    private static TextNode Read(Parser parser, string text)
    {
        switch (parser.Consume<ParsingEvent>())
        {
            case Scalar scalar:
                return new TextScalar((int)scalar.Start.Index, (int)scalar.End.Index, scalar.Value);
            case SequenceStart list:
                List<TextNode> items = [];
                while (!parser.TryConsume<SequenceEnd>(out _))
                {
                    items.Add(Read(parser, text));
                }

                bool isInBrackets = list.Style == SequenceStyle.Flow;
                int from = (int)list.Start.Index;
                return new TextList(from, EndOf(text, from, isInBrackets, items.Count > 0 ? items[^1].End : null), isInBrackets, items);
            case MappingStart group:
                List<TextEntry> entries = [];
                while (!parser.TryConsume<MappingEnd>(out _))
                {
                    entries.Add(new TextEntry((TextScalar)Read(parser, text), Read(parser, text)));
                }

                bool isInBraces = group.Style == MappingStyle.Flow;
                int start = (int)group.Start.Index;
                return new TextGroup(start, EndOf(text, start, isInBraces, entries.Count > 0 ? entries[^1].Value.End : null), isInBraces, entries);
            case var other:
                throw new YamlException(other.Start, other.End, "no value");
        }
    }

    // The library's end of a group is not its real end. After the last value come spaces, a comma and comments, then the bracket.
    private static int EndOf(string text, int start, bool hasBrackets, int? lastEnd)
    {
        if (!hasBrackets)
        {
            return lastEnd ?? start;
        }

        int at = lastEnd ?? start + 1;
        while (text[at] is not (']' or '}'))
        {
            at = text[at] == '#' ? text.IndexOf('\n', at) + 1 : at + 1;
        }

        return at + 1;
    }
}
