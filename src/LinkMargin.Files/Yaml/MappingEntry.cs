using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Yaml;

/// <summary>One key with its value.</summary>
internal sealed record MappingEntry(string Key, Mark KeyMark, Node Value);
