using LinkMargin.Files.Problems;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;
using Mark = LinkMargin.Files.Problems.Mark;

namespace LinkMargin.Files.Yaml;

/// <summary>
/// Builds the tree of nodes from YAML text. An error that makes the rest unreadable (syntax, limits, aliases) is recorded once
/// and ends the reading; a key written twice is recorded and reading continues.
/// </summary>
internal sealed class YamlTree
{
    private readonly Source source;
    private readonly PlacedParser parser;
    private int nodes;

    private YamlTree(string text, Source source)
    {
        this.source = source;
        parser = new PlacedParser(new StringReader(text));
    }

    /// <summary>Reads a text with one group of keys; null, with an error recorded, if it is not that.</summary>
    public static MappingNode? ParseMapping(string text, Source source)
    {
        switch (Parse(text, source))
        {
            case null:
                return null;
            case MappingNode mapping:
                return mapping;
            case { } other:
                source.Error(other.Mark,
                    $"the file holds {other.Kind} where keys with values are needed, such as '{source.Example}'");
                return null;
        }
    }

    /// <summary>Reads a text with one value; null, with an error recorded, if it is not that.</summary>
    public static Node? Parse(string text, Source source)
    {
        try
        {
            return new YamlTree(text, source).Document();
        }
        catch (YamlException e)
        {
            (Mark mark, string sentence) = SyntaxFault.Explain(e, text);
            source.Error(mark, sentence);
            return null;
        }
    }

    private Node? Document()
    {
        parser.Consume<StreamStart>();
        if (parser.TryConsume<StreamEnd>(out _))
        {
            source.Error(new Mark(1, 1), $"this file is empty; {source.Start}");
            return null;
        }

        parser.Consume<DocumentStart>();
        Node? root = Read(0);
        if (root is null)
        {
            return null;
        }

        parser.Consume<DocumentEnd>();
        if (!parser.Accept<StreamEnd>(out _))
        {
            source.Error(MarkOf(parser.Current!),
                "a second document starts here; a file holds one, so remove this '---' or what follows");
            return null;
        }

        return root;
    }

    /// <summary>Reads the next value; null if reading must end.</summary>
    private Node? Read(int depth)
    {
        ParsingEvent found = parser.Consume<ParsingEvent>();
        Mark mark = MarkOf(found);
        if (Refusal(found, depth) is { } refusal)
        {
            source.Error(mark, refusal);
            return null;
        }

        return found switch
        {
            Scalar scalar => new ScalarNode(mark, scalar.Value, scalar.Style != ScalarStyle.Plain),
            SequenceStart => Sequence(mark, depth),
            MappingStart => Mapping(mark, depth),
            // After unusual sequences of '?' and ':' the parser ends a group between a key and its value.
            _ => throw new YamlException(found.Start, found.End, "no node content"),
        };
    }

    private string? Refusal(ParsingEvent found, int depth)
    {
        if (found is AnchorAlias or NodeEvent { Anchor.IsEmpty: false })
        {
            return "anchors and aliases (&name, *name) are not used here; write the value out, or put a text that begins with & or * in quotes";
        }

        if (found is NodeEvent { Tag: { IsEmpty: false, IsNonSpecific: false } })
        {
            return "tags (!name) are not used here; remove it, or put a text that begins with ! in quotes";
        }

        if (++nodes > YamlLimits.Nodes)
        {
            return FormattableString.Invariant($"this file holds more than the allowed {YamlLimits.Nodes} values; split it or remove detail");
        }

        return found is not Scalar && depth >= YamlLimits.Depth
            ? FormattableString.Invariant($"lists and groups are nested more than {YamlLimits.Depth} deep here, the maximum; check the brackets")
            : null;
    }

    private SequenceNode? Sequence(Mark mark, int depth)
    {
        List<Node> items = [];
        while (!parser.TryConsume<SequenceEnd>(out _))
        {
            if (Read(depth + 1) is not { } item)
            {
                return null;
            }

            items.Add(item);
        }

        return new SequenceNode(mark, items);
    }

    private MappingNode? Mapping(Mark mark, int depth)
    {
        List<MappingEntry> entries = [];
        Dictionary<string, Mark> seen = [];
        while (!parser.TryConsume<MappingEnd>(out _))
        {
            if (Read(depth + 1) is not { } key || Read(depth + 1) is not { } value)
            {
                return null;
            }

            if (key is not ScalarNode { Text: var name })
            {
                source.Error(key.Mark, $"there is {key.Kind} where a key is needed; write 'key: value'");
            }
            else if (seen.TryGetValue(name, out Mark first))
            {
                source.Error(key.Mark, FormattableString.Invariant($"the key {Quote.Of(name)} appears twice; the first is in line {first.Line}, so remove one"));
            }
            else
            {
                seen.Add(name, key.Mark);
                entries.Add(new MappingEntry(name, key.Mark, value));
            }
        }

        return new MappingNode(mark, entries);
    }

    private static Mark MarkOf(ParsingEvent found) => new((int)found.Start.Line, (int)found.Start.Column);
}

/// <summary>
/// The library's parser, with every failure turned into an exception with a position: for some bracket errors the library
/// throws an exception of another type without one.
/// </summary>
internal sealed class PlacedParser(TextReader text) : IParser
{
    /// <summary>The message of such an error, for which the library has none.</summary>
    public const string Unworded = "flow collection left open, or its key broken over two lines";

    private readonly Scanner scanner = new(text, skipComments: true);
    private Parser? parser;

    /// <inheritdoc/>
    public ParsingEvent? Current => parser?.Current;

    /// <inheritdoc/>
    public bool MoveNext()
    {
        try
        {
            return (parser ??= new Parser(scanner)).MoveNext();
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or OverflowException)
        {
            throw new YamlException(scanner.CurrentPosition, scanner.CurrentPosition, Unworded, e);
        }
    }
}
