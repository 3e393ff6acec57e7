using System.Text.RegularExpressions;

namespace LinkMargin.Cli.Tests.Documents;

/// <summary>Documents are short, fit a terminal, lead somewhere, and use one word for one thing.</summary>
public sealed partial class DocumentTests
{
    private const int MostReadmeWords = 1800, MostDevelopersWords = 2500, MostCodeColumns = 80;

    public static TheoryData<string> Documents => [.. ProjectDocument.All.Select(document => document.Name)];

    [Theory]
    [InlineData("README.md", MostReadmeWords)]
    [InlineData("DEVELOPERS.md", MostDevelopersWords)]
    public void A_document_is_short(string name, int most) =>
        Assert.InRange(new ProjectDocument(name).Text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Length, 500, most);

    [Theory]
    [MemberData(nameof(Documents))]
    public void Code_fits_eighty_columns(string name) =>
        Assert.All(new ProjectDocument(name).CodeLines, line => Assert.InRange(line.Length, 0, MostCodeColumns));

    [Theory]
    [MemberData(nameof(Documents))]
    public void Links_lead_somewhere(string name)
    {
        ProjectDocument document = new(name);
        string folder = Path.GetDirectoryName(document.Path)!;
        Assert.All(Link().Matches(document.Text), link =>
        {
            string[] parts = (link.Groups["link"].Value + link.Groups["image"].Value).Split('#');
            string target = parts[0].Length == 0 ? document.Path : Path.GetFullPath(Path.Combine(folder, parts[0]));
            Assert.True(Path.Exists(target), $"{name}: {link.Value}");
            if (parts.Length > 1)
            {
                Assert.Contains(parts[1], File.ReadAllLines(target).Where(line => line.StartsWith('#')).Select(Anchor));
            }
        });
    }

    [Theory]
    [MemberData(nameof(Documents))]
    public void Replaced_terms_do_not_stand_in_a_document(string name)
    {
        string text = OfFilesAndKeys().Replace(WithoutSamples(new ProjectDocument(name).Text), " ");
        Assert.All(ReplacedTerms.All, term => Assert.False(
            Regex.Match(text, $@"\b({term.Old})\b", RegexOptions.IgnoreCase) is { Success: true, Value: var found },
            $"{name} has '{Regex.Match(text, $@"\b({term.Old})\b", RegexOptions.IgnoreCase).Value}'; write '{term.Use}'"));
    }

    /// <summary>Documents for developers name types, methods and test files in code; this keeps them to those that exist.</summary>
    [Fact]
    public void Types_named_in_documents_for_developers_exist()
    {
        HashSet<string> words = [.. ProjectDocument.FilesOf("*.cs").SelectMany(file => Identifier().Matches(new ProjectDocument(file).Text).Select(word => word.Value))];
        foreach (ProjectDocument document in ProjectDocument.All.Where(document => document.Name != "README.md" && !document.Name.StartsWith(ProjectDocument.GuideFolder, StringComparison.Ordinal)))
        {
            string[] named = [.. TypeName().Matches(document.Text).Select(type => type.Groups[1].Value).Distinct()];
            Assert.All(named.SelectMany(name => name.Split('.')), part => Assert.True(words.Contains(part), $"{document.Name} names '{part}', which the code does not have."));
        }
    }

    [Fact]
    public void Developers_see_the_folders_of_the_engine_in_their_order()
    {
        IEnumerable<string> engine = File.ReadLines(Path.Combine(ProjectDocument.Top, "src", "folders.txt")).SkipWhile(line => line != "LinkMargin.Engine").Skip(1).TakeWhile(line => line.Length > 0);
        IEnumerable<string> listed = new ProjectDocument("DEVELOPERS.md").CodeLines.Select(line => EngineFolder().Match(line).Groups[1].Value).Where(folder => folder.Length > 0);
        Assert.Equal(engine.Select(line => line.Trim()).Where(folder => !folder.Contains('/', StringComparison.Ordinal)), listed);
    }

    // The program's own words have a test of their own.
    private static string WithoutSamples(string text) => SampleText().Replace(text, "");

    // Headings as links name them: lower case, blanks as hyphens, other marks dropped.
    private static string Anchor(string heading) =>
        NotInAnchors().Replace(heading.TrimStart('#').Trim().ToLowerInvariant(), "").Replace(' ', '-');

    [GeneratedRegex("""\]\((?!https?:)(?<link>[^)\s]+)\)|src="(?<image>[^"]+)" """, RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Link();

    [GeneratedRegex("^    ([A-Z][a-z]+)  ")]
    private static partial Regex EngineFolder();

    [GeneratedRegex("[A-Z][A-Za-z0-9]+")]
    private static partial Regex Identifier();

    [GeneratedRegex("`([A-Z][a-z]+[A-Za-z0-9]*(?:\\.[A-Z][A-Za-z]+)*)`")]
    private static partial Regex TypeName();

    [GeneratedRegex("```text\n[^`]*```")]
    private static partial Regex SampleText();

    // Code, and names of files and types: a file of measurements that was called readings keeps its name.
    [GeneratedRegex("`[^`\n]*`|<!--.*?-->|\\S+\\.(csv|yaml|cs|md)\\S*")]
    private static partial Regex OfFilesAndKeys();

    [GeneratedRegex("[^a-z0-9 _-]")]
    private static partial Regex NotInAnchors();
}
