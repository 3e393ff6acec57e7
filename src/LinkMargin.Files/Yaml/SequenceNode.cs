using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Yaml;

/// <summary>A list.</summary>
internal sealed record SequenceNode(Mark Mark, IReadOnlyList<Node> Items) : Node(Mark)
{
    /// <inheritdoc/>
    public override string Kind => "a list";
}
