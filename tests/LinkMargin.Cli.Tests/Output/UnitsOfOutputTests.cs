using LinkMargin.Files.Tests.Quantities;

namespace LinkMargin.Cli.Tests.Output;

/// <summary>Every command on a house in metres and on the same house in feet: text of one system never holds the other's.</summary>
public sealed class UnitsOfOutputTests : IDisposable
{
    private const string More = """
        fixtures:
          - {name: rack, level: den, box: [0.2, 0.2, 0.8, 0.8], to: 2, material: sheet-steel, front: north, open: [front]}
          - {name: screen, level: loft, box: [1, 4.8, 2.5, 4.9], from: 0.7, to: 1.5, material: flat-screen}
        zones:
          - {name: loft ledge, level: loft, corner: [0.5, 4.5], size: [3, 0.3], heights: [0.4, 1.4]}

        """;

    private const string Measurements = """
        transmitter,receiver level,receiver x,receiver y,receiver height,received,device
        den rack,den,3,2,0.7,-52,phone
        den rack,den,6,4,1,-61,phone
        den rack,loft,1.5,1,0.9,-68,phone
        loft shelf,den,3,2,0.7,-66,phone

        """;

    private readonly ScratchFolder folder = new();

    public UnitsOfOutputTests()
    {
        string text = SampleFile.Modest.Replace("at: [0.5, 0.5, 1.1]", "inside: rack, height: 1.1", StringComparison.Ordinal).Replace(", level: den, inside", ", inside", StringComparison.Ordinal) + More;
        folder.Put("m.yaml", text);
        folder.Put("ft.yaml", FeetText.Of(text));
        folder.Put("m.csv", Measurements);
        folder.Put("ft.csv", Measurements.Replace("receiver x,receiver y,receiver height", "receiver x (m),receiver y (m),receiver height (m)", StringComparison.Ordinal));
    }

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("check HOUSE", 0)]
    [InlineData("compare HOUSE --model direct", 0)]
    [InlineData("compare HOUSE --model direct --what-if 'remove fixture screen'", 0)]
    [InlineData("explain HOUSE --spot 'den rack' --seat desk --all-paths", 0)]
    [InlineData("explain HOUSE --spot 'loft shelf' --seat sofa", 0)]
    [InlineData("map HOUSE --cell LONG --model direct", 0)]
    [InlineData("map HOUSE --paths --spot 'loft shelf' --seat sofa --model direct", 0)]
    [InlineData("place HOUSE --grid LONG --model direct", 0)]
    [InlineData("improve HOUSE --spot 'den rack' --model direct", 0)]
    [InlineData("fit HOUSE READINGS", 0)]
    [InlineData("fit HOUSE --template blank.csv", 0)]
    [InlineData("fit HOUSE --where-next --model direct", 0)]
    [InlineData("compare HOUSE --what-if 'move spot loft shelf to 99 1 1'", 2)]
    [InlineData("compare HOUSE --what-if 'move spot loft shelf to 1 1 9'", 2)]
    [InlineData("compare HOUSE --what-if 'move spot loft shelf to 9999 1 9'", 2)]
    [InlineData("compare HOUSE --what-if 'move spot loft shelf to 1'", 2)]
    [InlineData("compare HOUSE --what-if 'move spot loft shelf to 1 1 up'", 2)]
    [InlineData("compare HOUSE --what-if 'material games den | passage = brick'", -1)]
    [InlineData("map HOUSE --cell 99999", 2)]
    [InlineData("map HOUSE --cell wide", 2)]
    [InlineData("place HOUSE --height 77", 2)]
    public void A_commands_text_is_in_the_unit_of_the_house(string command, int exitCode)
    {
        foreach (string unit in new[] { "m", "ft" })
        {
            string line = command.Replace("HOUSE", $"{unit}.yaml", StringComparison.Ordinal)
                .Replace("READINGS", $"{unit}.csv", StringComparison.Ordinal)
                .Replace("LONG", unit == "m" ? "1" : "3", StringComparison.Ordinal);
            CommandRun run = CommandRun.In(folder.Path, [.. CommandRun.WordsOf(line), "--force"]);
            string text = run.Output + run.Error;
            Assert.True(exitCode < 0 || run.ExitCode == exitCode || (exitCode == 0 && run.ExitCode == 1), text);
            Assert.DoesNotMatch(unit == "m" ? LengthsIn.Feet : LengthsIn.Metres, text);
        }
    }

    [Theory]
    [InlineData("units: m", "units: m", "at: [7, 4, 1.5]", "at: [7, 4, 3.5]")]
    [InlineData("corner: [4, 0], size: [4, 5]", "corner: [3, 0], size: [4, 5]", "", "")]
    [InlineData("at: [7, 4], hands", "at: [9, 4], hands", "", "")]
    [InlineData("box: [0.2, 0.2, 0.8, 0.8], to: 2", "box: [0.2, 0.2, 0.2, 0.8], to: 2", "", "")]
    [InlineData("hands: 0.7", "hands: 40", "", "")]
    [InlineData("heights: [0.4, 1.4]", "heights: [0.4, 2.9]", "", "")]
    public void What_check_says_of_a_spoilt_house_is_in_its_unit(string from, string to, string from2, string to2)
    {
        string spoilt = File.ReadAllText(folder.PathOf("m.yaml")).Replace(from, to, StringComparison.Ordinal);
        spoilt = from2.Length == 0 ? spoilt : spoilt.Replace(from2, to2, StringComparison.Ordinal);
        folder.Put("m.yaml", spoilt);
        folder.Put("ft.yaml", FeetText.Of(spoilt));
        CommandRun metres = CommandRun.In(folder.Path, "check", "m.yaml"), feet = CommandRun.In(folder.Path, "check", "ft.yaml");
        Assert.Equal(metres.ExitCode, feet.ExitCode);
        Assert.Matches(LengthsIn.Feet, CommandRun.OneLineEach(feet.Output).Split('\n')[0]);
        Assert.DoesNotMatch(LengthsIn.Metres, feet.Output + feet.Error);
        Assert.Matches(LengthsIn.Metres, CommandRun.OneLineEach(metres.Output).Split('\n')[0]);
        Assert.DoesNotMatch(LengthsIn.Feet, metres.Output + metres.Error);
    }

    /// <summary>JSON is metric, in whatever unit the file is: only words in it follow the file.</summary>
    [Fact]
    public void Json_of_both_houses_has_the_same_lengths()
    {
        double[] metres = Heights("m.yaml"), feet = Heights("ft.yaml");
        Assert.Equal(metres, feet, (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(2.4, metres[0]);
    }

    private double[] Heights(string file) =>
        [.. CommandRun.In(folder.Path, "check", file, "--json").Json.GetProperty("levels").EnumerateArray().Select(level => level.GetProperty("heightM").GetDouble())];
}
