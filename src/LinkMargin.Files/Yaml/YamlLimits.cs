namespace LinkMargin.Files.Yaml;

/// <summary>What a file may be at most. A house of a thousand walls stays far below each.</summary>
internal static class YamlLimits
{
    /// <summary>Bytes in a file.</summary>
    public const int Bytes = 4 * 1024 * 1024;

    /// <summary>Lists and groups inside one another.</summary>
    public const int Depth = 32;

    /// <summary>Values of any kind, keys included.</summary>
    public const int Nodes = 200_000;
}
