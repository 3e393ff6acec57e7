using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Tables;

/// <summary>A folder of tables for one test, gone afterwards.</summary>
internal sealed class TableFolder : IDisposable
{
    public TableFolder() => Path = Directory.CreateTempSubdirectory("tables").FullName;

    public string Path { get; }

    /// <summary>All four built-in files.</summary>
    public static TableFolder OfBuiltIn()
    {
        TableFolder folder = new();
        foreach (string name in MaterialTablesFile.FileNames)
        {
            folder.Write(name, MaterialTablesFile.BuiltInText(name));
        }

        return folder;
    }

    public void Write(string name, string text) => File.WriteAllText(System.IO.Path.Combine(Path, name), text);

    public MaterialTablesResult Read() => MaterialTablesFile.ReadFolder(Path);

    /// <summary>The problems, without the folder's name.</summary>
    public string[] Problems() =>
        [.. Read().Problems.Select(p => p.ToString().Replace(Path + System.IO.Path.DirectorySeparatorChar, "", StringComparison.Ordinal))];

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
