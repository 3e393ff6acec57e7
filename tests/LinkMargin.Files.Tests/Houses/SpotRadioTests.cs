using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>Spots whose console has a radio of its own.</summary>
public sealed class SpotRadioTests
{
    [Theory]
    [InlineData("console-typical", "console-typical", 0)]
    [InlineData("{name: dongle, transmit: 4, gain: -3, sensitivity: -95}", "dongle", -95)]
    [InlineData("{transmit: 4, gain: -3, sensitivity: -95}", "console", -95)]
    public void It_is_named_from_the_table_or_written_out(string radio, string name, double sensitivityDbm)
    {
        HouseParseResult read = Parse(radio);
        Assert.Empty(read.Problems);
        House house = read.House!;
        Assert.Equal(name, house.Spots[0].Radio!.Name);
        Assert.Equal(house.Spots[0].Radio, house.ConsoleAt(house.Spots[0]));
        Assert.Equal(sensitivityDbm == 0 ? DenText.Tables.Radios[name].Sensitivity.Dbm : sensitivityDbm, house.ConsoleAt(house.Spots[0]).Sensitivity.Dbm);
    }

    [Fact]
    public void Without_one_it_is_the_radio_of_the_house()
    {
        House house = HouseFile.Parse(DenText.House + "spots: [{name: s, inside: rack, height: 1}]", "h.yaml", DenText.Tables).House!;
        Assert.Null(house.Spots[0].Radio);
        Assert.Same(house.Console, house.ConsoleAt(house.Spots[0]));
    }

    [Theory]
    [InlineData("console-typicl", "did you mean 'console-typical'?")]
    [InlineData("{transmit: 4, gain: -3}", "sensitivity")]
    [InlineData("{transmit: 400, gain: -3, sensitivity: -95}", "is outside the allowed")]
    public void Each_fault_has_a_remedy(string radio, string part)
    {
        Problem problem = Assert.Single(Parse(radio).Problems);
        Assert.Contains(part, problem.Message, StringComparison.Ordinal);
        Assert.Equal(DenText.House.Split('\n').Length, problem.Mark.Line);
    }

    private static HouseParseResult Parse(string radio) =>
        HouseFile.Parse($"{DenText.House}spots: [{{name: s, inside: rack, height: 1, radio: {radio}}}]", "h.yaml", DenText.Tables);
}
