using System.Reflection;

namespace LinkMargin.Cli.Tests;

/// <summary>Who may see whom, by what the built assemblies refer to; and what stands at the top of the tree.</summary>
public sealed class LayeringTests
{
    private static readonly string[] Projects = ["LinkMargin.Engine", "LinkMargin.Files", "LinkMargin.Plots", "LinkMargin.Reports", "LinkMargin.Web", "linkmargin"];

    [Theory]
    [InlineData("LinkMargin.Engine")]
    [InlineData("LinkMargin.Files", "LinkMargin.Engine")]
    [InlineData("LinkMargin.Plots", "LinkMargin.Engine")]
    [InlineData("LinkMargin.Reports", "LinkMargin.Engine", "LinkMargin.Files", "LinkMargin.Plots")]
    [InlineData("LinkMargin.Web", "LinkMargin.Engine", "LinkMargin.Files", "LinkMargin.Plots", "LinkMargin.Reports")]
    [InlineData("linkmargin", "LinkMargin.Engine", "LinkMargin.Files", "LinkMargin.Plots", "LinkMargin.Reports", "LinkMargin.Web")]
    public void A_project_sees_only_those_below_it(string project, params string[] below) =>
        Assert.Empty(ReferencesOf(project).Intersect(Projects, StringComparer.OrdinalIgnoreCase).Except(below));

    [Theory]
    [InlineData("ScottPlot", "LinkMargin.Plots")]
    [InlineData("SkiaSharp", "LinkMargin.Plots")]
    [InlineData("YamlDotNet", "LinkMargin.Files")]
    [InlineData("CsvHelper", "LinkMargin.Files")]
    [InlineData("System.CommandLine", "linkmargin")]
    [InlineData("Microsoft.AspNetCore.Http.Abstractions", "LinkMargin.Web")]
    [InlineData("MathNet.Numerics", "LinkMargin.Engine")]
    [InlineData("NetTopologySuite", "LinkMargin.Files")]
    [InlineData("QuikGraph", "LinkMargin.Engine")]
    public void A_library_is_used_in_one_project_only(string library, string user) =>
        Assert.All(Projects.Except([user]), project => Assert.DoesNotContain(library, ReferencesOf(project)));

    [Fact]
    public void The_engine_reads_no_file_and_writes_to_no_console() =>
        Assert.Empty(ReferencesOf("LinkMargin.Engine").Intersect(["System.Console", "System.IO.FileSystem", "System.Net.Http"]));

    [Fact]
    public void The_top_of_the_tree_holds_what_it_should_and_nothing_else()
    {
        string top = TopOfTheTree();

        // What builds and runs leave behind is named in .gitignore.
        IEnumerable<string> leftovers = File.ReadLines(Path.Combine(top, ".gitignore")).Select(line => line.TrimEnd('/'));
        string[] visible =
        [
            .. Directory.EnumerateFileSystemEntries(top).Select(entry => Path.GetFileName(entry))
                .Where(name => name[0] != '.').Except(leftovers).Order(StringComparer.Ordinal),
        ];
        string[] expected = ["DEVELOPERS.md", "LinkMargin.sln", "README.md", "materials", "plots", "src", "tests"];
        Assert.Equal(expected, visible);
    }

    private static string[] ReferencesOf(string project) =>
        [.. Assembly.Load(project).GetReferencedAssemblies().Select(reference => reference.Name!)];

    private static string TopOfTheTree()
    {
        for (string? folder = AppContext.BaseDirectory; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            if (File.Exists(Path.Combine(folder, "LinkMargin.sln")))
            {
                return folder;
            }
        }

        throw new DirectoryNotFoundException("No folder above the tests holds LinkMargin.sln.");
    }
}
