namespace LinkMargin.Cli.Tests;

/// <summary>A folder of a test's own, gone when the test is.</summary>
public sealed class ScratchFolder : IDisposable
{
    /// <summary>
    /// Its full path. The part of the name that differs each time has letters only: commands print the path, and a test that looks for
    /// lengths in what they print would take "…7m/house.yaml" for seven metres.
    /// </summary>
    public string Path { get; } = Make();

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

    private static string Make()
    {
        while (true)
        {
            DirectoryInfo made = Directory.CreateTempSubdirectory("linkmargin-test-");
            if (!made.Name.Any(char.IsAsciiDigit))
            {
                return made.FullName;
            }

            made.Delete();
        }
    }
}
