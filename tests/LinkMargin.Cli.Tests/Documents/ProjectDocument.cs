using System.Text.RegularExpressions;

namespace LinkMargin.Cli.Tests.Documents;

/// <summary>A Markdown file of the project, as it stands in the tree that the tests were built from.</summary>
/// <param name="Name">Its path from the top of the tree.</param>
internal sealed partial record ProjectDocument(string Name)
{
    /// <summary>The folder of the user's guide.</summary>
    public const string GuideFolder = "src/LinkMargin.Cli/Guide";

    /// <summary>The top of the tree.</summary>
    public static string Top { get; } = TopOfTheTree();

    /// <summary>Every document, README.md first.</summary>
    public static IReadOnlyList<ProjectDocument> All { get; } =
    [
        new("README.md"),
        new("DEVELOPERS.md"),
        .. FilesOf("*.md").Select(file => new ProjectDocument(file)),
    ];

    /// <summary>The names of all files of a kind in the source and test folders, without what builds leave there.</summary>
    public static IEnumerable<string> FilesOf(string pattern) => Directory.EnumerateFiles(System.IO.Path.Combine(Top, "src"), pattern, SearchOption.AllDirectories)
        .Concat(Directory.EnumerateFiles(System.IO.Path.Combine(Top, "tests"), pattern, SearchOption.AllDirectories))
        .Select(file => System.IO.Path.GetRelativePath(Top, file).Replace('\\', '/'))
        .Where(file => !BuildOutput().IsMatch(file))
        .Order(StringComparer.Ordinal);

    /// <summary>A topic of the guide.</summary>
    public static ProjectDocument Guide(string topic) => new($"{GuideFolder}/{topic}.md");

    /// <summary>The file.</summary>
    public string Path => System.IO.Path.Combine(Top, Name);

    /// <summary>Its text.</summary>
    public string Text => File.ReadAllText(Path).ReplaceLineEndings("\n");

    /// <summary>Its lines.</summary>
    public string[] Lines => Text.Split('\n');

    /// <summary>The lines of its code blocks.</summary>
    public IEnumerable<string> CodeLines
    {
        get
        {
            bool isCode = false;
            foreach (string line in Lines)
            {
                if (line.StartsWith("```", StringComparison.Ordinal))
                {
                    isCode = !isCode;
                }
                else if (isCode || line.StartsWith("    ", StringComparison.Ordinal))
                {
                    yield return line;
                }
            }
        }
    }

    /// <summary>The lines under a heading, down to the next one.</summary>
    public string[] Section(string heading)
    {
        int start = Array.IndexOf(Lines, heading);
        Assert.True(start >= 0, $"{Name} has no heading '{heading}'.");
        return [.. Lines.Skip(start + 1).TakeWhile(line => !line.StartsWith('#'))];
    }

    private static string TopOfTheTree()
    {
        for (string? folder = AppContext.BaseDirectory; folder is not null; folder = System.IO.Path.GetDirectoryName(folder))
        {
            if (File.Exists(System.IO.Path.Combine(folder, "LinkMargin.sln")))
            {
                return folder;
            }
        }

        throw new InvalidOperationException("The tests do not run inside the project's tree.");
    }

    [GeneratedRegex("(^|/)(bin|obj)/")]
    private static partial Regex BuildOutput();
}
