using System.Text;
using System.Text.Json;

namespace LinkMargin.Cli.Tests.Commands;

public sealed class FitCommandTests : IDisposable
{
    private const string Measurements =
        """
        transmitter,receiver,received,device
        den rack,sofa,-48,phone
        den rack,bench,-61,phone
        den rack,desk,-66,phone
        loft shelf,sofa,-62,phone
        loft shelf,bench,-58,phone
        loft shelf,desk,-50,phone
        loft shelf,desk,-52,phone

        """;

    private readonly ScratchFolder folder = new();

    public FitCommandTests()
    {
        folder.Put("house.yaml", SampleFile.Modest);
        folder.Put("readings.csv", Measurements);
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_template_names_every_link_and_is_never_written_over_once_it_is_filled_in()
    {
        CommandRun run = Run("fit", "house.yaml", "--template", "blank.csv");
        Assert.Equal(0, run.ExitCode);
        string[] lines = File.ReadAllText(folder.PathOf("blank.csv")).TrimEnd().Split('\n');
        Assert.Equal("transmitter,receiver,received,device", lines[0]);
        Assert.Equal(1 + 6, lines.Length);
        Assert.Equal(2, Run("fit", "house.yaml", "blank.csv").ExitCode);
        folder.Put("blank.csv", lines[0] + "\nden rack,sofa,-48,phone\n");
        Assert.Equal(2, Run("fit", "house.yaml", "--template", "blank.csv").ExitCode);
        Assert.Contains("-48", File.ReadAllText(folder.PathOf("blank.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_fit_tells_how_well_it_does_and_every_command_takes_what_it_found()
    {
        CommandRun fit = Run("fit", "house.yaml", "readings.csv", "--out", "fitted.yaml", "--plot", "fit.png");
        Assert.Equal(0, fit.ExitCode);
        Assert.Contains("Test Cottage: 6 measurements with 'phone'", fit.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Contains("distance power law, exponent", fit.Output, StringComparison.Ordinal);
        Assert.Contains("'linkmargin compare house.yaml --fitted fitted.yaml'", fit.OutputUnwrapped, StringComparison.Ordinal);
        Assert.True(fit.Output.Split('\n').Max(line => line.Length) <= 80);
        PictureFile.AssertSheet(folder.PathOf("fit.png"));

        foreach (string[] words in (string[][])
            [["compare"], ["explain", "--spot", "den rack", "--seat", "sofa"], ["improve", "--spot", "den rack"], ["map", "--spot", "den rack", "--level", "den", "--cell", "0.5", "--out", "maps"]])
        {
            CommandRun plain = Run([words[0], "house.yaml", .. words[1..]]);
            CommandRun fitted = Run([words[0], "house.yaml", .. words[1..], "--fitted", "fitted.yaml"]);
            Assert.True(fitted.ExitCode < 2, fitted.Error);
            Assert.Contains("Losses fitted to 6 measurements in the house 'Test Cottage'.", fitted.OutputUnwrapped, StringComparison.Ordinal);
            Assert.NotEqual(plain.Output, fitted.Output);
        }
    }

    [Fact]
    public void The_json_holds_each_measurement_law_and_material()
    {
        JsonElement root = Run("fit", "house.yaml", "readings.csv", "--json").Json;
        Assert.Equal(["house", "freeSpace", "distancePowerLaw"], root.GetProperty("models").EnumerateArray().Select(law => law.GetProperty("model").GetString()!));
        JsonElement desk = root.GetProperty("measurements").EnumerateArray().Single(measurement =>
            measurement.GetProperty("transmitter").GetString() == "loft shelf" && measurement.GetProperty("receiver").GetString() == "desk");
        Assert.Equal([7, 8], desk.GetProperty("lines").EnumerateArray().Select(line => line.GetInt32()));
        Assert.Equal(10 * Math.Log10((Math.Pow(10, -5) + Math.Pow(10, -5.2)) / 2), desk.GetProperty("levelDbm").GetDouble(), 1e-9);
        Assert.Equal(
            desk.GetProperty("levelDbm").GetDouble() - desk.GetProperty("predictedDbm").GetDouble(), desk.GetProperty("residualDb").GetDouble(), 1e-9);
        Assert.Contains("brick-215", root.GetProperty("materials").EnumerateArray().Select(material => material.GetProperty("material").GetString()));
    }

    [Fact]
    public void Measurements_taken_in_a_house_that_stood_otherwise_are_fitted_to_that_house()
    {
        CommandRun text = Run("fit", "house.yaml", "readings.csv", "--what-if", "move spot loft shelf to 6 1 1.5");
        JsonElement moved = Run("fit", "house.yaml", "readings.csv", "--json", "--what-if", "move spot loft shelf to 6 1 1.5").Json, plain = Run("fit", "house.yaml", "readings.csv", "--json").Json;
        Assert.StartsWith("What if spot 'loft shelf' is at 6.00 m east, 1.00 m north, 1.50 m high on loft.", text.OutputUnwrapped, StringComparison.Ordinal);
        Assert.Equal("move spot loft shelf to 6 1 1.5", Assert.Single(moved.GetProperty("whatIf").EnumerateArray()).GetString());
        Assert.False(plain.TryGetProperty("whatIf", out _));
        Assert.NotEqual(plain.GetProperty("models")[0].ToString(), moved.GetProperty("models")[0].ToString());
    }

    [Fact]
    public void Where_to_read_next_is_reported_before_and_after_measurements()
    {
        CommandRun before = Run("fit", "house.yaml", "--where-next", "--plot", "next.png");
        Assert.Equal(0, before.ExitCode);
        Assert.Contains("uncertainty", before.Output, StringComparison.Ordinal);
        PictureFile.AssertSheet(folder.PathOf("next.png"));
        JsonElement after = Run("fit", "house.yaml", "readings.csv", "--where-next", "--json").Json;
        Assert.Equal(6, after.GetProperty("measurementsSoFar").GetInt32());
        Assert.Equal(5, after.GetProperty("measurements").GetArrayLength());
    }

    [Theory]
    [InlineData(";", ",")] // semicolons between fields, decimal commas in them
    [InlineData(",", ".")]
    public void A_file_is_read_as_people_write_it(string separator, string point)
    {
        string text = Measurements.Replace(",", separator, StringComparison.Ordinal).Replace("-48", $"-48{point}5", StringComparison.Ordinal)
            .Replace("\n", "\r\n", StringComparison.Ordinal);
        File.WriteAllText(folder.PathOf("other.csv"), text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
        CommandRun run = Run("fit", "house.yaml", "other.csv", "--json");
        Assert.Equal(0, run.ExitCode);
        Assert.Equal(-48.5, run.Json.GetProperty("measurements")[0].GetProperty("levelDbm").GetDouble(), 1e-9);
    }

    [Fact]
    public void A_missing_heading_is_taken_for_the_templates()
    {
        folder.Put("bare.csv", Measurements[(Measurements.IndexOf('\n', StringComparison.Ordinal) + 1)..]);
        CommandRun run = Run("fit", "house.yaml", "bare.csv", "--json");
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("the line of headings is missing", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("den rack,sofa,-48,phone", "den rack,sofa,48,phone", "readings.csv:2:15")] // a level above 0 dBm
    [InlineData("den rack,sofa,-48,phone", "den rack,soffa,-48,phone", "readings.csv:2:10")] // no such seat
    [InlineData("den rack,sofa,-48,phone", "den rack,sofa,loud,phone", "readings.csv:2:15")]
    public void What_cannot_be_a_measurement_is_refused_with_line_and_column(string from, string to, string place)
    {
        folder.Put("readings.csv", Measurements.Replace(from, to, StringComparison.Ordinal));
        CommandRun run = Run("fit", "house.yaml", "readings.csv");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(place, run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_outside_the_house_is_named_and_an_unknown_column_is_reported()
    {
        folder.Put("readings.csv", "transmitter,receiver x,receiver y,receiver level,received,device,weather\nden rack,70,2,den,-60,phone,dry\nden rack,3,2,den,-50,phone,dry\n");
        CommandRun run = Run("fit", "house.yaml", "readings.csv");
        Assert.Contains("readings.csv:2:", run.Error, StringComparison.Ordinal);
        Assert.Contains("weather", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_device_that_appears_once_says_nothing_of_the_house_and_is_named()
    {
        folder.Put("readings.csv", Measurements + "den rack,desk,-60,tablet\n");
        Assert.Contains("'tablet' appears once", Run("fit", "house.yaml", "readings.csv").OutputUnwrapped, StringComparison.Ordinal);
    }

    [Fact]
    public void A_thousand_equal_rows_are_one_measurement()
    {
        JsonElement once = Run("fit", "house.yaml", "readings.csv", "--json").Json;
        folder.Put("readings.csv", Measurements + string.Concat(Enumerable.Repeat("den rack,sofa,-48,phone\n", 999)));
        JsonElement often = Run("fit", "house.yaml", "readings.csv", "--json").Json;
        Assert.Equal(NoiseOf(once), NoiseOf(often), 1e-9);

        static double NoiseOf(JsonElement root) => root.GetProperty("measurements")[0].GetProperty("noiseDb").GetDouble();
    }

    [Fact]
    public void A_fitted_file_of_another_house_is_refused_or_said_to_be_odd()
    {
        folder.Put("fitted.yaml", "fitted: Elsewhere\nreadings: 3\nmaterials:\n  - {name: bamboo, table: 3 dB, shift: 1 dB, table-spread: 1 dB, spread: 0.5 dB}\ndevices: []\ncorrelations: []\n");
        CommandRun run = Run("compare", "house.yaml", "--fitted", "fitted.yaml");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("the house contains none of these", run.Error, StringComparison.Ordinal);
        Assert.Equal(2, Run("compare", "house.yaml", "--fitted", "nowhere.yaml").ExitCode);
    }

    [Fact]
    public void Without_measurements_it_says_what_to_do()
    {
        CommandRun run = Run("fit", "house.yaml");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("--template measurements.csv", run.Error, StringComparison.Ordinal);
    }

    private CommandRun Run(params string[] words) => CommandRun.In(folder.Path, words);
}
