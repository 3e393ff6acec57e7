using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Yaml;

/// <summary>One value of a YAML file and where it stands.</summary>
internal abstract record Node(Mark Mark)
{
    /// <summary>What it is, for a message: <c>a list</c>.</summary>
    public abstract string Kind { get; }
}
