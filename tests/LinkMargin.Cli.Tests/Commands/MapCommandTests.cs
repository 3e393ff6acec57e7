using System.Globalization;
using System.Text.Json;
using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Tables;

namespace LinkMargin.Cli.Tests.Commands;

public sealed class MapCommandTests : IDisposable
{
    private readonly ScratchFolder folder = new();

    public MapCommandTests() => folder.Put("house.yaml", SampleFile.Text);

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_picture_of_every_spot_on_every_level_and_a_sheet_go_into_a_folder_named_after_the_house()
    {
        CommandRun run = Run("map", "house.yaml", "--cell", "1", "--model", "direct");

        Assert.Equal(0, run.ExitCode);
        Assert.Empty(run.Error);
        Assert.Equal(
            [
                "house-maps/map-den-rack-on-den.png",
                "house-maps/map-den-rack-on-loft.png",
                "house-maps/map-loft-shelf-on-den.png",
                "house-maps/map-loft-shelf-on-loft.png",
                "house-maps/sheet.png",
                "house.yaml",
            ],
            folder.Files);
        Assert.All(folder.Files.Where(f => f.EndsWith(".png", StringComparison.Ordinal)), file =>
        {
            PictureFile.AssertSheet(folder.PathOf(file));
            Assert.Contains(Path.GetFileName(file), run.Output, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void The_numbers_are_those_of_the_engine()
    {
        House house = SampleFile.HouseOf(SampleFile.Text);
        var model = new LinkModel(house);
        CommandRun run = Run(
            "map", "house.yaml", "--spot", "loft shelf", "--level", "den", "--cell", "50 cm", "--hands", "1.1", "--csv", "--geojson", "--json", "--out", "out");

        var maps = new CountedMaps(model, new UncertaintyBasis(MaterialTablesFile.ReadBuiltIn().Tables!.Spreads!), 0.9, run.Json.GetProperty("requiredDb").GetDouble());
        (Field field, Field counts) = maps.Compute(new FieldRequest(house.Spots[1], 0) { CellMetres = 0.5, HandsMetres = 1.1, Stage = FieldStage.Map });
        double[] computed = [.. field.MarginDb.Where(double.IsFinite)], atConfidence = [.. counts.MarginDb.Where(double.IsFinite)];

        JsonElement map = Assert.Single(run.Json.GetProperty("maps").EnumerateArray());
        Assert.Equal(0.5, run.Json.GetProperty("cellM").GetDouble());
        Assert.Equal(1.1, run.Json.GetProperty("handsM").GetDouble());
        Assert.False(run.Json.TryGetProperty("sheet", out _));
        Assert.Equal(computed.Length, map.GetProperty("cells").GetInt32());
        Assert.Equal(atConfidence.Min(), map.GetProperty("lowestMarginAtConfidenceDb").GetDouble());
        Assert.Equal(atConfidence.Max(), map.GetProperty("highestMarginAtConfidenceDb").GetDouble());
        Assert.Equal(
            atConfidence.Count(m => m >= run.Json.GetProperty("requiredDb").GetDouble()) / (double)computed.Length, map.GetProperty("sharePassing").GetDouble());
        Assert.Equal(0.9, run.Json.GetProperty("confidence").GetDouble());
        string[] rows = File.ReadAllLines(folder.PathOf(map.GetProperty("csv").GetString()!));
        Assert.Equal("spot,level,xM,yM,handsM,medianDb,marginAtConfidenceDb", rows[0]);
        Assert.Equal(computed, Written(2), (a, b) => Math.Abs(a - b) <= 0.5e-4 + 1e-9);
        Assert.Equal(atConfidence, Written(1), (a, b) => Math.Abs(a - b) <= 0.5e-4 + 1e-9);
        using JsonDocument geojson = JsonDocument.Parse(File.ReadAllText(folder.PathOf(map.GetProperty("geojson").GetString()!)));
        Assert.Equal(computed.Length, geojson.RootElement.GetProperty("features").GetArrayLength());

        IEnumerable<double> Written(int fromEnd) => rows.Skip(1).Select(row => double.Parse(row.Split(',')[^fromEnd], CultureInfo.InvariantCulture));
    }

    [Fact]
    public void The_median_can_be_shown_and_the_numbers_stay()
    {
        string[] words = ["map", "house.yaml", "--spot", "loft shelf", "--level", "den", "--cell", "1", "--csv", "--model", "direct", "--out"];
        CommandRun atConfidence = Run([.. words, "one"]), median = Run([.. words, "two", "--show", "median"]);

        Assert.Equal(atConfidence.Output.Replace("one/", "two/", StringComparison.Ordinal), median.Output);
        Assert.Equal(File.ReadAllText(folder.PathOf("one/map-loft-shelf-on-den.csv")), File.ReadAllText(folder.PathOf("two/map-loft-shelf-on-den.csv")));
        Assert.NotEqual(File.ReadAllBytes(folder.PathOf("one/map-loft-shelf-on-den.png")), File.ReadAllBytes(folder.PathOf("two/map-loft-shelf-on-den.png")));
    }

    [Fact]
    public void A_bare_length_is_in_the_unit_of_the_house_file()
    {
        folder.Put("feet.yaml", FeetText());

        CommandRun run = Run("map", "feet.yaml", "--spot", "den rack", "--level", "den", "--cell", "2", "--hands", "2ft 6in", "--json", "--model", "direct");

        Assert.Equal(0.6096, run.Json.GetProperty("cellM").GetDouble(), 1e-12);
        Assert.Equal(0.762, run.Json.GetProperty("handsM").GetDouble(), 1e-12);
    }

    [Fact]
    public void A_house_in_feet_is_answered_in_feet()
    {
        folder.Put("feet.yaml", FeetText());

        CommandRun run = Run("map", "feet.yaml", "--spot", "den rack", "--level", "den", "--cell", "2", "--model", "direct");

        Assert.Contains("cells of 2ft 0in, hands 2ft 4in", run.OutputUnwrapped, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--cell", "0", "--cell '0' is 0 m, but 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "0.009", "--cell '0.009' is 0.009 m, but 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "5.01", "--cell '5.01' is 5.01 m, but 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "-1", "--cell '-1' is -1 m, but 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "nan", "--cell 'nan' is not a finite number; 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "2,4", "--cell '2,4' has a decimal comma; write 2.4; 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "1e400", "--cell '1e400' is too large to be a finite number; 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "0.1 parsec", "--cell '0.1 parsec' has the unit 'parsec', which is not a unit of length; write m, cm, mm, ft or in; 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "wide", "--cell 'wide' is not a length; write, for example, 3.81 m or 38 mm; 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "1e-9", "--cell '1e-9' is 1e-9 m, but 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "1e308", "--cell '1e308' is 1e308 m, but 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "-1e308", "--cell '-1e308' is -1e308 m, but 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "4.9e-324", "--cell '4.9e-324' is 4.9407e-324 m, but 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "1e-400", "--cell '1e-400' is 0 m, but 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "0.009999999", "--cell '0.009999999' is 0.009999999 m, but 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "5.000001", "--cell '5.000001' is 5.000001 m, but 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "1e308 ft", "--cell '1e308 ft' is 3.048e307 m, but 0.01 m to 5 m is allowed")]
    [InlineData("--cell", "1/0", "--cell '1/0' divides by zero; 0.01 m to 5 m is allowed")]
    [InlineData("--hands", "1e308", "--hands '1e308' is 1e308 m, but 0 m to 2.5 m is allowed")]
    [InlineData("--hands", "-1e-9", "--hands '-1e-9' is -1e-9 m, but 0 m to 2.5 m is allowed")]
    [InlineData("--confidence", "1e308", "--confidence '1e308' must be 0.5 to 0.999; 0.9 means 90 % confidence")]
    [InlineData("--confidence", "1e-9", "--confidence '1e-9' must be 0.5 to 0.999; 0.9 means 90 % confidence")]
    [InlineData("--confidence", "-0", "--confidence '-0' must be 0.5 to 0.999; 0.9 means 90 % confidence")]
    [InlineData("--confidence", "1e400", "--confidence '1e400' is too large to be a finite number; 0.5 to 0.999 is allowed")]
    [InlineData("--hands", "9", "--hands '9' is 9 m, but 0 m to 2.5 m is allowed")]
    [InlineData("--hands", "infinity", "--hands 'infinity' is not a finite number; 0 m to 2.5 m is allowed")]
    [InlineData("--confidence", "0.4", "--confidence '0.4' must be 0.5 to 0.999; 0.9 means 90 % confidence")]
    [InlineData("--confidence", "90", "--confidence '90' must be 0.5 to 0.999; 0.9 means 90 % confidence")]
    [InlineData("--confidence", "sure", "--confidence 'sure' is not a share; write 0.9 or 90%; 0.5 to 0.999 is allowed")]
    [InlineData("--show", "medain", "there is no margin 'medain' for --show; did you mean 'median'?")]
    [InlineData("--level", "dne", "there is no level 'dne'; did you mean 'den'?")]
    [InlineData("--spot", "den rakc", "there is no spot 'den rakc'; did you mean 'den rack'?")]
    public void A_value_that_will_not_do_gets_one_sentence_and_no_file(string option, string value, string sentence)
    {
        CommandRun run = Run("map", "house.yaml", option, value);

        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Equal($"linkmargin: {sentence}\n", run.Error);
        Assert.Equal(["house.yaml"], folder.Files);
    }

    [Theory]
    [InlineData("0.01", 0)]
    [InlineData("5", 0)]
    public void The_limits_of_a_cell_themselves_are_allowed(string cell, int exitCode)
    {
        folder.Put("small.yaml", SampleFile.Text.Replace("[4, 5]", "[0.9, 0.8]", StringComparison.Ordinal).Replace("corner: [4, 0]", "corner: [0.9, 0]", StringComparison.Ordinal)
            .Replace("[8, 5]", "[1.8, 0.8]", StringComparison.Ordinal).Replace("[3, 2]", "[0.3, 0.4]", StringComparison.Ordinal)
            .Replace("[7, 4, 1.5]", "[1.2, 0.4, 1.5]", StringComparison.Ordinal).Replace("[7, 4]", "[1.2, 0.4]", StringComparison.Ordinal).Replace("[1.5, 1]", "[1.5, 0.4]", StringComparison.Ordinal));

        Assert.Equal(exitCode, Run("map", "small.yaml", "--cell", cell, "--spot", "den rack", "--level", "den", "--model", "direct").ExitCode);
    }

    [Fact]
    public void More_cells_than_can_be_held_are_refused_before_any_work()
    {
        folder.Put("vast.yaml", SampleFile.Text.Replace("[4, 5]", "[90, 80]", StringComparison.Ordinal).Replace("corner: [4, 0]", "corner: [90, 0]", StringComparison.Ordinal));

        CommandRun run = Run("map", "vast.yaml", "--cell", "0.01", "--level", "den");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("level 'den' would need more than 20000000 cells; choose a larger --cell", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_this_program_did_not_write_is_left_alone_unless_forced()
    {
        Directory.CreateDirectory(folder.PathOf("out"));
        folder.Put("out/map-den-rack-on-den.png", "mine");
        string[] words = ["map", "house.yaml", "--spot", "den rack", "--level", "den", "--cell", "1", "--model", "direct", "--out", "out"];

        CommandRun refused = Run(words);

        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("map-den-rack-on-den.png", refused.Error, StringComparison.Ordinal);
        Assert.Contains("--force", refused.Error, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(folder.PathOf("out/map-den-rack-on-den.png")));
        Assert.Equal(0, Run([.. words, "--force"]).ExitCode);
        Assert.NotEqual("mine", File.ReadAllText(folder.PathOf("out/map-den-rack-on-den.png")));
    }

    [Fact]
    public void Its_own_files_are_replaced_without_asking()
    {
        string[] words = ["map", "house.yaml", "--spot", "den rack", "--level", "den", "--cell", "1", "--model", "direct", "--csv", "--geojson"];

        Assert.Equal(0, Run(words).ExitCode);
        Assert.Equal(0, Run([.. words, "--hands", "1"]).ExitCode);
    }

    [Theory]
    [InlineData("house.yaml")]
    [InlineData("house.yaml/below")]
    [InlineData("/proc/linkmargin")]
    public void A_folder_that_cannot_be_made_gets_one_sentence(string where)
    {
        CommandRun run = Run("map", "house.yaml", "--cell", "1", "--model", "direct", "--out", where);

        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Single(run.Error.TrimEnd().Split('\n'));
        Assert.Contains(where.Split('/')[^1], run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("unexpected", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Asked_to_stop_it_leaves_nothing_half_written()
    {
        StringWriter output = new(), error = new() { NewLine = "\n" };
        using var stop = new CancellationTokenSource();
        stop.Cancel();

        int exitCode = CommandLineProgram.Run(
            ["map", "house.yaml", "--model", "direct"], new Invocation(output, error, folder.Path) { Cancellation = stop.Token });

        Assert.Equal(130, exitCode);
        Assert.Empty(output.ToString());
        Assert.StartsWith("linkmargin: stopped", error.ToString(), StringComparison.Ordinal);
        Assert.Equal(["house.yaml"], folder.Files);
    }

    [Theory]
    [InlineData("1e-9", "--cell '1e-9' is 1.2e-8in, but 7/16in to 16ft 4 13/16in is allowed")]
    [InlineData("1e308", "--cell '1e308' is 1e+308ft, but 7/16in to 16ft 4 13/16in is allowed")]
    [InlineData("nan", "--cell 'nan' is not a finite number; 7/16in to 16ft 4 13/16in is allowed")]
    public void A_value_that_will_not_do_for_a_house_in_feet_gets_a_range_in_feet(string value, string sentence)
    {
        folder.Put("feet.yaml", FeetText());
        CommandRun run = Run("map", "feet.yaml", "--cell", value);
        Assert.Equal(2, run.ExitCode);
        Assert.Equal($"linkmargin: {sentence}\n", run.Error);
    }

    private static string FeetText() => SampleFile.Text.Replace("units: m", "units: ft", StringComparison.Ordinal)
        .Replace("height: 2.4", "height: 8", StringComparison.Ordinal).Replace("height: 2.3", "height: 7ft 6in", StringComparison.Ordinal)
        .Replace("[4, 5]", "[13, 16]", StringComparison.Ordinal).Replace("corner: [4, 0]", "corner: [13, 0]", StringComparison.Ordinal)
        .Replace("[8, 5]", "[26, 16]", StringComparison.Ordinal).Replace("hands: 0.7,", "hands: 2.3,", StringComparison.Ordinal)
        .Replace("hands: 0.75", "hands: 2.5", StringComparison.Ordinal);

    private CommandRun Run(params string[] words) => CommandRun.In(folder.Path, words);
}
