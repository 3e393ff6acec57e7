using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>One table's file: what it is called in messages, its text, and whether it is the built-in one.</summary>
/// <param name="Source">The file, with what is found wrong in it.</param>
/// <param name="Text">Its text; null where it could not be read, which is then recorded.</param>
/// <param name="IsBuiltIn">Whether it came with the program.</param>
internal sealed record TableText(Source Source, string? Text, bool IsBuiltIn)
{
    /// <summary>Opens the table; null, with mistakes recorded, where it is none.</summary>
    /// <param name="what">What it is, such as <c>the material table</c>.</param>
    /// <param name="key">The one key it has.</param>
    public MappingReader? Open(string what, string key) =>
        Text is not null && YamlTree.ParseMapping(Text, Source) is { } root
            ? new MappingReader(Source, root, what, [key])
            : null;
}
