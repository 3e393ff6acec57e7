using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Yaml;

/// <summary>Keys with values, in the order written; no key stands twice.</summary>
internal sealed record MappingNode(Mark Mark, IReadOnlyList<MappingEntry> Entries) : Node(Mark)
{
    /// <inheritdoc/>
    public override string Kind => "a group of keys";
}
