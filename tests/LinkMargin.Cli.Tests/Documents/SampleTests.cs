using System.Collections.Concurrent;
using System.Globalization;
using System.Text.RegularExpressions;
using LinkMargin.Files.Resources;

namespace LinkMargin.Cli.Tests.Documents;

/// <summary>
/// The samples of output in the documents are what the program prints. A sample is a block of text behind a comment such as
/// <c>&lt;!-- sample: explain HOUSE --spot S | blocks 1-2 --&gt;</c>: the command, and which of the blocks of its output, parted
/// by empty lines, are shown; a number below 0 counts from the end.
/// <code>LINKMARGIN_WRITE_SAMPLES=1 dotnet test tests/LinkMargin.Cli.Tests --filter SampleTests</code>
/// writes all of them anew into the documents.
/// </summary>
public sealed partial class SampleTests : IClassFixture<SampleTests.DemoFolder>
{
    private const int MostLines = 25;

    private readonly DemoFolder folder;

    public SampleTests(DemoFolder folder) => this.folder = folder;

    private static bool IsWriting => Environment.GetEnvironmentVariable("LINKMARGIN_WRITE_SAMPLES") == "1";

    public static TheoryData<string, string> Samples
    {
        get
        {
            TheoryData<string, string> data = [];
            foreach (ProjectDocument document in ProjectDocument.All)
            {
                foreach (Match sample in Sample().Matches(document.Text))
                {
                    data.Add(document.Name, sample.Groups["mark"].Value);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void A_sample_is_what_the_program_prints(string document, string mark)
    {
        ProjectDocument file = new(document);
        Match sample = Sample().Matches(file.Text).Single(found => found.Groups["mark"].Value == mark);
        string printed = Blocks(folder.OutputOf(sample.Groups["command"].Value), sample.Groups["blocks"].Value);
        if (IsWriting)
        {
            Group text = sample.Groups["text"];
            File.WriteAllText(file.Path, file.Text[..text.Index] + printed + file.Text[(text.Index + text.Length)..]);
            return;
        }

        Assert.Equal(printed, sample.Groups["text"].Value);
        Assert.InRange(printed.Split('\n').Length, 2, MostLines);
    }

    /// <summary>The README shows a comparison as what the demo prints, which takes longer.</summary>
    [Fact]
    public void The_demo_prints_what_compare_prints()
    {
        string compared = folder.OutputOf("compare linkmargin-demo/tern-terrace.yaml --model direct");
        Assert.StartsWith(compared.Split("\n\n")[0], folder.OutputOf("demo --model direct --out elsewhere"), StringComparison.Ordinal);
        Assert.StartsWith(compared.TrimEnd(), folder.OutputOf("demo --model direct --out elsewhere"), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_block_of_output_is_a_sample()
    {
        Assert.NotEmpty(Samples);
        Assert.All(ProjectDocument.All, document =>
            Assert.Equal(document.Lines.Count(line => line == "```text"), Sample().Count(document.Text)));
    }

    private static string Blocks(string output, string range)
    {
        string[] blocks = output.TrimEnd('\n').Split("\n\n");
        int[] ends = [.. Number().Matches(range).Select(number => int.Parse(number.Value, CultureInfo.InvariantCulture))];
        int first = Place(ends[0]), last = Place(ends[^1]);
        return string.Join("\n\n", blocks[first..(last + 1)]) + "\n";

        int Place(int number) => number > 0 ? number - 1 : blocks.Length + number;
    }

    [GeneratedRegex("<!-- (?<mark>sample: (?<command>[^|\n]+?) \\| blocks (?<blocks>[0-9-]+)) -->\n```text\n(?<text>[^`]*?)```\n")]
    private static partial Regex Sample();

    [GeneratedRegex("(?<![0-9])-?[0-9]+")]
    private static partial Regex Number();

    [GeneratedRegex("\"([^\"]*)\"|(\\S+)")]
    private static partial Regex Word();

    /// <summary>A folder as the demo leaves it, and what commands print there.</summary>
    public sealed class DemoFolder : IDisposable
    {
        private readonly ScratchFolder folder = new();
        private readonly ConcurrentDictionary<string, string> outputs = new();

        public DemoFolder()
        {
            Directory.CreateDirectory(folder.PathOf("linkmargin-demo"));
            folder.Put("linkmargin-demo/tern-terrace.yaml", DemoHouse.Text);
            folder.Put("linkmargin-demo/tern-terrace-measurements.csv", DemoMeasurements.Text);
        }

        public string OutputOf(string command) => outputs.GetOrAdd(command, typed =>
        {
            CommandRun run = CommandRun.In(folder.Path, [.. Word().Matches(typed).Select(word => word.Groups[1].Success ? word.Groups[1].Value : word.Value)]);
            Assert.NotEqual(2, run.ExitCode);
            return run.Output;
        });

        public void Dispose() => folder.Dispose();
    }
}
