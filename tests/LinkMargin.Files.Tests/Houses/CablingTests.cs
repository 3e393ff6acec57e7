using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>Displays, devices, passages and cables: what is read, and every fault with its place and remedy.</summary>
public sealed class CablingTests
{
    private const string House = DenText.House + "spots: [{name: shelf, level: loft, at: [7, 4, 1.5]}]\n";

    private const string Good =
        """
        displays: [{name: screen, fixture: panel, inputs: [processed, direct], signal: 4k120 4:4:4 12 bit, takes: 48 Gbit/s, through: box}]
        devices: [{name: box, inside: rack, role: processor, inputs: 4}, {name: splitter, inside: rack, height: 1.2, outputs: 2, passes: 18}]
        passages: [{name: chase, from: [0.2, 0.2], levels: [den, loft], bore: 35 mm, bends: 1, holds: [category-6, category-6]}, {name: slot, from: [0.2, 3], to: [3.8, 3], levels: [den], clear: [50 mm, 1in]}]
        cables: [{name: old, from: rack, to: screen, kind: hdmi-optical, length: 65 ft}]
        """;

    [Fact]
    public void All_of_it_is_read()
    {
        HouseParseResult read = HouseFile.Parse(House + Good, "h.yaml", DenText.Tables);
        Assert.Empty(read.Problems);
        Cabling cabling = read.House!.Cabling;
        Display screen = Assert.Single(cabling.Displays);
        Assert.Equal([DisplayInput.Processed, DisplayInput.Direct], screen.Inputs);
        Assert.Equal((48.0, "box", "panel", 12), (screen.TakesGbps, screen.Through, screen.Place.Fixture, screen.Signal.BitsPerSample));
        Assert.Equal([DeviceRole.Processor, DeviceRole.Splitter], cabling.Devices.Select(device => device.Role));
        Assert.Equal([1.0, 1.2], cabling.Devices.Select(device => device.Place.HeightMetres));
        Assert.Equal([0.035, null], cabling.Passages.Select(passage => passage.BoreMetres));
        Assert.Equal(0.0254, cabling.Passages[1].Clear!.Value.HeightMetres, 1e-12);
        Assert.Equal((0, 1, 1, 2), (cabling.Passages[0].LowerLevel, cabling.Passages[0].UpperLevel, cabling.Passages[0].Bends, cabling.Passages[0].Holds.Count));
        PulledCable old = Assert.Single(cabling.Cables);
        Assert.Equal(("rack", "screen", "hdmi-optical"), (old.From.Name, old.To.Name, old.Kind.Name));
        Assert.Equal(65 * 0.3048, old.LengthMetres!.Value, 1e-12);
        Assert.Contains(cabling.Kinds, kind => kind.Use == CableUse.Lead);
    }

    [Fact]
    public void A_house_that_says_nothing_of_cables_has_none() => Assert.Same(Cabling.None, HouseFile.Parse(House, "h.yaml", DenText.Tables).House!.Cabling);

    [Theory]
    [InlineData("displays: [{name: s, fixture: pannel}]", 1, 31, "did you mean 'panel'?")]
    [InlineData("displays: [{name: s}]", 1, 12, "needs either 'fixture' or 'level' and 'at: [x, y, height]'")]
    [InlineData("displays: [{name: s, at: [1, 1, 1]}]", 1, 12, "needs the key 'level'")]
    [InlineData("displays: [{name: s, level: attic, at: [1, 1, 1]}]", 1, 29, "no level is named 'attic'")]
    [InlineData("displays: [{name: s, fixture: panel, signal: 4k120 4:4:5}]", 1, 46, "did you mean '4:4:4'?")]
    [InlineData("displays: [{name: s, fixture: panel, inputs: [directly]}]", 1, 47, "did you mean 'direct'?")]
    [InlineData("displays: [{name: s, fixture: panel, through: box}]", 1, 47, "no processor is named 'box'")]
    [InlineData("displays: [{name: s, fixture: panel, takes: fast}]", 1, 45, "write 48 Gbit/s")]
    [InlineData("displays: [{name: s, fixture: panel, inputs: [direct, direct]}]", 1, 55, "listed twice")]
    [InlineData("displays: [{name: s, level: den, at: [1, 1, 9]}]", 1, 38, "2.4")]
    [InlineData("devices: [{name: d, inside: racks}]", 1, 29, "did you mean 'rack'?")]
    [InlineData("devices: [{name: d, inside: rack}, {name: d, inside: rack}]", 1, 43, "'d'")]
    [InlineData("devices: [{name: d, inside: rack, passes: 0}]", 1, 43, "is outside the allowed")]
    [InlineData("passages: [{name: p, from: [1, 1], levels: [den, loft, den]}]", 1, 44, "the one level the passage is on, or the two it joins")]
    [InlineData("passages: [{name: p, from: [1, 1], to: [1, 1], levels: [den]}]", 1, 12, "connects nothing: both ends are at the same place")]
    [InlineData("passages: [{name: p, from: [1, 1], to: [1, 9], levels: [den, loft]}]", 1, 40, "connects nothing on the level 'loft'")]
    [InlineData("passages: [{name: p, from: [1, 1], levels: [den, loft], bends: 1.5}]", 1, 64, "write a whole number")]
    [InlineData("passages: [{name: p, from: [1, 1], levels: [den, loft], clear: [1]}]", 1, 64, "[width, height]")]
    [InlineData("cables: [{name: c, from: rack, to: panel, kind: hdmi-optical, length: -2 m}]", 1, 71, "is outside the allowed")]
    [InlineData("devices: [{name: d, inside: rack, role: spliter}]", 1, 41, "did you mean 'splitter'?")]
    [InlineData("devices: [{name: d, inside: rack, role: splitter}]", 1, 41, "a splitter has at least 2")]
    [InlineData("devices: [{name: d, inside: rack, outputs: 2.5}]", 1, 44, "write a whole number")]
    [InlineData("passages: [{name: p, from: [1, 1], levels: [den]}]", 1, 12, "connects nothing: both ends are at the same place")]
    [InlineData("passages: [{name: p, from: [7, 1], levels: [den, loft]}]", 1, 28, "connects nothing on the level 'den'")]
    [InlineData("passages: [{name: p, from: [1, 1], levels: [den, lofts]}]", 1, 50, "did you mean 'loft'?")]
    [InlineData("passages: [{name: p, from: [1, 1], levels: [den, loft], bore: -5 mm}]", 1, 63, "is outside the allowed")]
    [InlineData("passages: [{name: p, from: [1, 1], levels: [den, loft], bore: 5 mm, clear: [1, 1]}]", 1, 76, "remove one")]
    [InlineData("passages: [{name: p, from: [1, 1], levels: [den, loft], holds: [category-7]}]", 1, 65, "did you mean 'category-6'?")]
    [InlineData("cables: [{name: c, from: rack, to: panel, kind: hdmi-optical, length: 2 m}]", 1, 71, "apart in a straight line")]
    [InlineData("cables: [{name: c, from: rack, to: rack, kind: hdmi-optical}]", 1, 36, "starts and ends at the same place")]
    [InlineData("cables: [{name: c, from: racks, to: panel, kind: hdmi-optical}]", 1, 26, "did you mean 'rack'?")]
    [InlineData("cables: [{name: c, from: rack, to: panel, kind: hdmi-opticals}]", 1, 49, "did you mean 'hdmi-optical'?")]
    public void Each_fault_has_a_place_and_a_remedy(string text, int line, int column, string part)
    {
        HouseParseResult read = HouseFile.Parse(House + text, "h.yaml", DenText.Tables);
        Problem problem = Assert.Single(read.Problems);
        Assert.Contains(part, problem.Message, StringComparison.Ordinal);
        Assert.Equal((House.Split('\n').Length - 1 + line, column), (problem.Mark.Line, problem.Mark.Column));
        Assert.Null(read.House);
    }

    /// <summary>At the cable that closes the circle, with all that make it.</summary>
    [Fact]
    public void Devices_that_feed_each_other_in_a_circle_are_an_error()
    {
        const string Text = """
            devices: [{name: a, inside: rack}, {name: b, inside: rack}, {name: c, inside: rack}]
            cables:
              - {name: ab, from: a, to: b, kind: hdmi-copper}
              - {name: bc, from: b, to: c, kind: hdmi-copper}
              - {name: ca, from: c, to: a, kind: hdmi-copper}
            """;
        Problem problem = Assert.Single(HouseFile.Parse(House + Text, "h.yaml", DenText.Tables).Problems);
        Assert.Equal((House.Split('\n').Length + 4, 29), (problem.Mark.Line, problem.Mark.Column));
        Assert.Contains("in a loop: 'ca' from 'c' to 'a', 'ab' from 'a' to 'b', 'bc' from 'b' to 'c'; fix 'from' or 'to'", problem.Message, StringComparison.Ordinal);
        Assert.Empty(HouseFile.Parse(House + Text.Replace("to: a", "to: rack", StringComparison.Ordinal), "h.yaml", DenText.Tables).Problems);
    }

    [Fact]
    public void All_faults_are_reported_at_once() =>
        Assert.Equal(3, HouseFile.Parse(House + "displays: [{name: s, fixture: x}]\npassages: [{name: p, from: [1, 1], levels: [den]}]\ncables: [{name: c, from: rack, to: rack, kind: hdmi-optical}]\n", "h.yaml", DenText.Tables).Problems.Count);

    [Fact]
    public void A_processed_input_without_a_processor_is_a_warning()
    {
        HouseParseResult read = HouseFile.Parse(House + "displays: [{name: s, fixture: panel, inputs: [processed]}]", "h.yaml", DenText.Tables);
        Assert.Equal(Severity.Warning, Assert.Single(read.Problems).Severity);
        Assert.NotNull(read.House);
    }

    [Theory]
    [InlineData("reach: [{rate: 48 Gbit/s, sure: 5 m, most: 3 m}]", "this is shorter than 'sure'")]
    [InlineData("reach: [{rate: 48 Gbit/s, sure: 5 m, most: 5 m}], stock: [10 m]", "even the shortest length is longer")]
    [InlineData("stock: [10 m]", "needs its 'reach'")]
    [InlineData("reach: [{rate: 48 Gbit/s, sure: 5 m, most: 5 m}], stock: [-1 m]", "is outside the allowed")]
    [InlineData("reach: [{sure: 5 m, most: 5 m}]", "needs the key 'rate'")]
    public void An_impossible_cable_is_refused(string part, string expected)
    {
        string table = $"cables: [{{name: c, what: w, use: picture, diameter: 5 mm, bend: 50 mm, directional: true, end: [9 mm, 9 mm], source: s, {part}}}]";
        Assert.Contains(MaterialTablesFile.Parse("cables.yaml", table).Problems, problem => problem.Message.Contains(expected, StringComparison.Ordinal));
    }
}
