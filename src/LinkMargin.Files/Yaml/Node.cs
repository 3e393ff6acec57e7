using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Yaml;

/// <summary>One value of a YAML file and where it stands.</summary>
internal abstract record Node(Mark Mark)
{
    /// <summary>What it is, for a message: <c>a list</c>.</summary>
    public abstract string Kind { get; }
}

/// <summary>A single value: its text without quotes. Only a value without quotes can be a null, a number or a flag.</summary>
internal sealed record ScalarNode(Mark Mark, string Text, bool IsQuoted) : Node(Mark)
{
    /// <summary>Whether nothing, <c>~</c> or <c>null</c> is written.</summary>
    public bool IsNull => !IsQuoted && Text is "" or "~" or "null" or "Null" or "NULL";

    /// <inheritdoc/>
    public override string Kind => IsNull ? "nothing" : Quote.Of(Text);
}

/// <summary>A list.</summary>
internal sealed record SequenceNode(Mark Mark, IReadOnlyList<Node> Items) : Node(Mark)
{
    /// <inheritdoc/>
    public override string Kind => "a list";
}

/// <summary>Keys with values, in the order written; no key stands twice.</summary>
internal sealed record MappingNode(Mark Mark, IReadOnlyList<MappingEntry> Entries) : Node(Mark)
{
    /// <inheritdoc/>
    public override string Kind => "a group of keys";
}

/// <summary>One key with its value.</summary>
internal sealed record MappingEntry(string Key, Mark KeyMark, Node Value);
