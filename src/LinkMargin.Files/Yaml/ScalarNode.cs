using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Yaml;

/// <summary>A single value: its text without quotes. Only a value without quotes can be a null, a number or a flag.</summary>
internal sealed record ScalarNode(Mark Mark, string Text, bool IsQuoted) : Node(Mark)
{
    /// <summary>Whether nothing, <c>~</c> or <c>null</c> is written.</summary>
    public bool IsNull => !IsQuoted && Text is "" or "~" or "null" or "Null" or "NULL";

    /// <inheritdoc/>
    public override string Kind => IsNull ? "nothing" : Quote.Of(Text);
}
