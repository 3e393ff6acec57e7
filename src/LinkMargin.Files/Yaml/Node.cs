using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Yaml;

/// <summary>One value of a YAML file and its position.</summary>
internal abstract record Node(Mark Mark)
{
    /// <summary>A description for a message: <c>a list</c>.</summary>
    public abstract string Kind { get; }
}

/// <summary>A single value: its text without quotes. Only an unquoted value can be a null, a number or a flag.</summary>
internal sealed record ScalarNode(Mark Mark, string Text, bool IsQuoted) : Node(Mark)
{
    /// <summary>Whether it is empty, <c>~</c> or <c>null</c>.</summary>
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

/// <summary>Keys with values, in written order; every key is unique.</summary>
internal sealed record MappingNode(Mark Mark, IReadOnlyList<MappingEntry> Entries) : Node(Mark)
{
    /// <inheritdoc/>
    public override string Kind => "a group of keys";
}

/// <summary>One key with its value.</summary>
internal sealed record MappingEntry(string Key, Mark KeyMark, Node Value);
