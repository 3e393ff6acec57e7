using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Reports.Tests.Texts;

public sealed class ObstacleSentenceTests
{
    private static readonly House House = SampleHouse.House;

    [Fact]
    public void A_clear_line_is_said_to_be_clear() => Assert.Equal("Nothing stands on the straight line.", Of("den rack", "sofa"));

    [Fact]
    public void A_wall_is_named_with_its_material_and_its_loss() =>
        Assert.Equal($"On the straight line: wall games den | passage (brick) {Lost("den rack", "bench")} dB.", Of("den rack", "bench"));

    [Fact]
    public void All_layers_of_a_floor_are_one() =>
        Assert.Equal($"On the straight line: floor above den {Lost("loft shelf", "bench")} dB.", Of("loft shelf", "bench"));

    private static string Of(string spot, string seat) => ObstacleSentence.Of(Budget(spot, seat), Loaded);

    // What all obstacles lose together, of which there is one.
    private static string Lost(string spot, string seat) => Budget(spot, seat).Paths[0].CrossingsDb.Sum().ToString("0.0", CultureInfo.InvariantCulture);

    private static LinkBudget Budget(string spot, string seat) => LinkEvaluation.Budget(
        new LinkModel(House, ModelDepth.Direct), House.Spots.Single(one => one.Name == spot), House.Seats.Single(one => one.Name == seat));

    private static LoadedHouse Loaded { get; } = new(SampleHouse.House, LengthUnit.Metre, MaterialTablesFile.ReadBuiltIn().Tables!);
}
