namespace LinkMargin.Cli.Tests;

/// <summary>A folder of a test's own, gone when the test is.</summary>
public sealed class ScratchFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("linkmargin-test-").FullName;

    /// <summary>Writes a file into it and gives its name.</summary>
    public string Put(string name, string text)
    {
        File.WriteAllText(PathOf(name), text);
        return name;
    }

    public string PathOf(string name) => System.IO.Path.Combine(Path, name);

    /// <summary>Every file in it and below, by its path from here.</summary>
    public IReadOnlyList<string> Files =>
        [.. Directory.EnumerateFiles(Path, "*", SearchOption.AllDirectories)
            .Select(file => System.IO.Path.GetRelativePath(Path, file).Replace('\\', '/'))
            .Order(StringComparer.Ordinal)];

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
