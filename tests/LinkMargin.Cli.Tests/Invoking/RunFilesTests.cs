using System.Diagnostics;

namespace LinkMargin.Cli.Tests.Invoking;

/// <summary>What a run reads or a person made is never written over, whatever it is called.</summary>
public sealed class RunFilesTests : IDisposable
{
    private const string Measurements =
        """
        transmitter,receiver,received,device
        den rack,sofa,-48,phone
        den rack,bench,-61,phone
        loft shelf,sofa,-62,phone
        loft shelf,bench,-58,phone

        """;

    // The same for every test.
    private static readonly Lazy<string> Fitted = new(() =>
    {
        using ScratchFolder folder = new();
        folder.Put("house.yaml", SampleFile.Modest);
        folder.Put("readings.csv", Measurements);
        Assert.Equal(0, CommandRun.In(folder.Path, "fit", "house.yaml", "readings.csv", "--out", "fitted.yaml", "--model", "direct").ExitCode);
        return File.ReadAllText(folder.PathOf("fitted.yaml"));
    });

    private readonly ScratchFolder folder = new();

    public RunFilesTests()
    {
        folder.Put("house.yaml", SampleFile.Modest);
        folder.Put("readings.csv", Measurements);
        Directory.CreateDirectory(folder.PathOf("tables"));
        folder.Put("tables/margins.yaml", Files.Tables.MaterialTablesFile.BuiltInText("margins.yaml"));
        folder.Put("fitted.yaml", Fitted.Value);
    }

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("house.yaml", "compare", "house.yaml", "--plot", "TARGET")]
    [InlineData("fitted.yaml", "compare", "house.yaml", "--fitted", "fitted.yaml", "--plot", "TARGET")]
    [InlineData("tables/margins.yaml", "compare", "house.yaml", "--materials", "tables", "--plot", "TARGET")]
    [InlineData("house.yaml", "fit", "house.yaml", "readings.csv", "--out", "TARGET")]
    [InlineData("readings.csv", "fit", "house.yaml", "readings.csv", "--out", "TARGET")]
    [InlineData("tables/margins.yaml", "fit", "house.yaml", "readings.csv", "--materials", "tables", "--out", "TARGET")]
    [InlineData("house.yaml", "fit", "house.yaml", "readings.csv", "--plot", "TARGET")]
    [InlineData("readings.csv", "fit", "house.yaml", "readings.csv", "--plot", "TARGET")]
    [InlineData("house.yaml", "fit", "house.yaml", "--template", "TARGET")]
    [InlineData("house.yaml", "fit", "house.yaml", "--where-next", "--plot", "TARGET")]
    [InlineData("readings.csv", "fit", "house.yaml", "readings.csv", "--where-next", "--plot", "TARGET")]
    public void What_a_run_reads_is_not_replaced_even_with_force(string input, params string[] words)
    {
        string before = File.ReadAllText(folder.PathOf(input));
        List<string> names = [input, folder.PathOf(input), $"./tables/../{input}"];
        if (!OperatingSystem.IsWindows())
        {
            File.CreateSymbolicLink(folder.PathOf("link"), input);
            using Process hard = Process.Start("ln", [folder.PathOf(input), folder.PathOf("hard")]);
            hard.WaitForExit();
            names.AddRange(["link", "hard"]);
        }

        foreach (string name in names)
        {
            CommandRun run = Run([.. words.Select(word => word.Replace("TARGET", name, StringComparison.Ordinal)), "--model", "direct", "--force"]);

            Assert.Equal(2, run.ExitCode);
            Assert.Contains($"this run reads the file '{input.Replace('/', Path.DirectorySeparatorChar)}', so not even --force replaces it; choose another name", run.Error, StringComparison.Ordinal);
            Assert.Equal(before, File.ReadAllText(folder.PathOf(input)));
        }
    }

    // These commands choose the names of their files, so only a link can lead one of them to what is read.
    [UnixTheory]
    [InlineData("house-plan.png", "check", "house.yaml")]
    [InlineData("out/house-plan.png", "check", "house.yaml", "--out", "out")]
    [InlineData("house-places.png", "place", "house.yaml")]
    [InlineData("out/map-den-rack-on-den.png", "map", "house.yaml", "--out", "out")]
    [InlineData("out/map-den-rack-on-den.csv", "map", "house.yaml", "--out", "out", "--csv")]
    [InlineData("out/map-den-rack-on-den.geojson", "map", "house.yaml", "--out", "out", "--geojson")]
    [InlineData("out/sheet.png", "map", "house.yaml", "--out", "out")]
    [InlineData("out/paths-den-rack-to-sofa.png", "map", "house.yaml", "--out", "out", "--paths", "--spot", "den rack", "--seat", "sofa")]
    public void Nor_is_it_through_a_link_that_has_the_name_of_an_output(string output, params string[] words)
    {
        Directory.CreateDirectory(folder.PathOf("out"));
        File.CreateSymbolicLink(folder.PathOf(output), folder.PathOf("house.yaml"));

        string[] more = words[0] switch
        {
            "check" => [],
            "map" => ["--model", "direct", "--cell", "0.5"],
            _ => ["--model", "direct", "--grid", "1"],
        };
        if (words.Contains("--paths"))
        {
            more = [];
        }

        CommandRun run = Run([.. words, .. more, "--force"]);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("this run reads the file 'house.yaml'", run.Error, StringComparison.Ordinal);
        Assert.Equal(SampleFile.Modest, File.ReadAllText(folder.PathOf("house.yaml")));
        Assert.NotNull(new FileInfo(folder.PathOf(output)).LinkTarget);
    }

    [Fact]
    public void Two_outputs_of_a_run_are_two_files()
    {
        CommandRun run = Run("fit", "house.yaml", "readings.csv", "--model", "direct", "--out", "both", "--plot", "./both", "--force");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("this run has just written the file 'both'; give each file its own name", run.Error, StringComparison.Ordinal);
        Assert.StartsWith("# Written by LinkMargin", File.ReadAllText(folder.PathOf("both")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_fitted_file_is_replaced_until_somebody_changes_it()
    {
        string[] again = ["fit", "house.yaml", "readings.csv", "--model", "direct", "--out", "fitted.yaml"];
        Assert.Equal(0, Run(again).ExitCode);
        string changed = File.ReadAllText(folder.PathOf("fitted.yaml")).Replace("measurements: 4", "measurements: 5", StringComparison.Ordinal);
        folder.Put("fitted.yaml", changed);

        CommandRun refused = Run(again);
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("fitted.yaml: this file was changed after LinkMargin wrote it", refused.Error, StringComparison.Ordinal);
        Assert.Equal(changed, File.ReadAllText(folder.PathOf("fitted.yaml")));
        Assert.NotEqual(2, Run("compare", "house.yaml", "--model", "direct", "--fitted", "fitted.yaml").ExitCode); // it may be changed

        Assert.Equal(0, Run([.. again, "--force"]).ExitCode);
        Assert.Contains("measurements: 4", File.ReadAllText(folder.PathOf("fitted.yaml")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("mine.yaml", "new", "mine.yaml")]
    [InlineData("blank.csv", "fit", "house.yaml", "--template", "blank.csv")]
    public void What_is_there_to_be_changed_is_replaced_until_somebody_does(string file, params string[] words)
    {
        Assert.Equal(0, Run(words).ExitCode);
        Assert.Equal(0, Run(words).ExitCode);
        string whole = File.ReadAllText(folder.PathOf(file)), changed = whole + "# mine\n";
        folder.Put(file, changed);

        CommandRun refused = Run(words);
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains($"{file}: this file exists", refused.Error, StringComparison.Ordinal);
        Assert.Equal(changed, File.ReadAllText(folder.PathOf(file)));

        Assert.Equal(0, Run([.. words, "--force"]).ExitCode);
        Assert.Equal(whole, File.ReadAllText(folder.PathOf(file)));
    }

    [Theory]
    [InlineData("tern-terrace.yaml")]
    [InlineData("tern-terrace-measurements.csv")]
    public void The_demo_keeps_what_somebody_made_of_its_house(string file)
    {
        Directory.CreateDirectory(folder.PathOf("demo"));
        folder.Put($"demo/{file}", "# mine\n");

        Assert.Equal(2, Run("demo", "--out", "demo").ExitCode);

        Assert.Equal("# mine\n", File.ReadAllText(folder.PathOf($"demo/{file}")));
    }

    private CommandRun Run(params string[] words) => CommandRun.In(folder.Path, words);
}
